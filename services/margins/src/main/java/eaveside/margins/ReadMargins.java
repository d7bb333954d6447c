package eaveside.margins;

import eaveside.catalog.Catalog;
import eaveside.kernel.Shared;
import eaveside.ledger.Account;
import eaveside.ledger.AccountRef;
import eaveside.ledger.AccountType;
import eaveside.ledger.Books;
import eaveside.ledger.ReadBalances;
import eaveside.ledger.ReadLedger;
import eaveside.margins.internal.MarginSheet;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;

/** Reads the margin by service line; a period's figures come from one query, so that they belong together. */
@Shared
public class ReadMargins {
    private final ReadBalances readBalances;
    private final ReadLedger readLedger;
    private final Catalog catalog;
    private final Books books;

    @Inject
    public ReadMargins(ReadBalances readBalances, ReadLedger readLedger, Catalog catalog, Books books) {
        this.readBalances = readBalances;
        this.readLedger = readLedger;
        this.catalog = catalog;
        this.books = books;
    }

    @Transactional
    public MarginReport margin(Period period) {
        List<Account> accounts = readLedger.accounts().stream()
                .filter(a -> a.type() == AccountType.REVENUE || a.type() == AccountType.EXPENSE)
                .toList();
        // The accounts that service lines earn and cost on come last, named by their roles, and win over their codes.
        List<AccountRef> asked =
                new ArrayList<>(accounts.stream().map(Account::code).toList());
        asked.addAll(MarginSheet.BY_LINE);
        return new MarginSheet(
                        period,
                        books.currency(),
                        accounts,
                        readBalances.byServiceLine(asked, period.from(), period.to()))
                .report(catalog.lines());
    }

    /** With the period before. */
    @Transactional
    public MarginComparison compare(Period period) {
        return new MarginComparison(margin(period), margin(period.previous()));
    }
}
