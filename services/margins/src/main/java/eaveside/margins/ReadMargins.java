package eaveside.margins;

import eaveside.catalog.Catalog;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.ledger.Account;
import eaveside.ledger.AccountRef;
import eaveside.ledger.AccountRole;
import eaveside.ledger.AccountType;
import eaveside.ledger.Books;
import eaveside.ledger.ReadBalances;
import eaveside.ledger.ReadLedger;
import eaveside.margins.internal.MarginSheet;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

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

    /** What each service line with any entry earned in so many months, the last of which is given; by code. */
    @Transactional
    public List<LineTrend> trend(YearMonth last, int months) {
        YearMonth first = last.minusMonths(months - 1L);
        List<ReadBalances.MonthBalance> balances =
                readBalances.byMonth(List.of(AccountRole.REVENUE, AccountRole.COST_OF_SERVICES), first, last);
        return catalog.lines().stream()
                .filter(line -> balances.stream().anyMatch(b -> b.serviceLine().equals(line.id())))
                .map(line -> new LineTrend(
                        line.id(),
                        line.name(),
                        Stream.iterate(first, month -> month.plusMonths(1))
                                .limit(months)
                                .map(month -> month(
                                        month,
                                        balances.stream()
                                                .filter(b -> b.serviceLine().equals(line.id())
                                                        && b.month().equals(month))
                                                .toList()))
                                .toList()))
                .toList();
    }

    private LineTrend.Month month(YearMonth month, List<ReadBalances.MonthBalance> balances) {
        return new LineTrend.Month(
                month,
                earned(balances.stream()
                        .filter(b -> b.account() == AccountRole.REVENUE)
                        .toList()),
                earned(balances));
    }

    private Money earned(List<ReadBalances.MonthBalance> balances) {
        return Money.sum(
                        books.currency(),
                        balances.stream().map(ReadBalances.MonthBalance::amount).toList())
                .negated();
    }
}
