package eaveside.margins;

import eaveside.ledger.AccountKind;
import eaveside.ledger.AccountRef;
import eaveside.ledger.Books;
import eaveside.ledger.ReadBalances;
import eaveside.ledger.ReadLedger;
import eaveside.margins.internal.MarginSheet;
import eaveside.offerings.Catalogue;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;

/** Reads the margin by service line; a period's figures come from one query, so that they belong together. */
@Dependent
public class ReadMargins {
    private final ReadBalances readBalances;
    private final ReadLedger readLedger;
    private final Catalogue catalogue;
    private final Books books;

    @Inject
    public ReadMargins(ReadBalances readBalances, ReadLedger readLedger, Catalogue catalogue, Books books) {
        this.readBalances = readBalances;
        this.readLedger = readLedger;
        this.catalogue = catalogue;
        this.books = books;
    }

    @Transactional
    public MarginReport margin(Period period) {
        List<ReadLedger.Account> accounts = readLedger.accounts().stream()
                .filter(a -> a.kind() == AccountKind.REVENUE || a.kind() == AccountKind.EXPENSE)
                .toList();
        // The accounts that service lines earn and cost on come last, named by their roles, and win over their codes.
        List<AccountRef> asked =
                new ArrayList<>(accounts.stream().map(ReadLedger.Account::code).toList());
        asked.addAll(MarginSheet.BY_LINE);
        return new MarginSheet(
                        period,
                        books.currency(),
                        accounts,
                        readBalances.byServiceLine(asked, period.from(), period.to()))
                .report(catalogue.lines());
    }

    /** With the period before. */
    @Transactional
    public MarginComparison compare(Period period) {
        return new MarginComparison(margin(period), margin(period.previous()));
    }
}
