package eaveside.ledger;

import eaveside.kernel.CustomerId;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Shared;
import eaveside.kernel.VisitId;
import eaveside.ledger.internal.AccountRow;
import eaveside.ledger.internal.ChartOfAccounts;
import eaveside.ledger.internal.LedgerQueries;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Sums of entries by their dimensions: what a visit has on an account, and what each service line has in a period. */
@Shared
public class ReadBalances {
    private final LedgerQueries queries;
    private final ChartOfAccounts chart;
    private final Books books;

    @Inject
    public ReadBalances(LedgerQueries queries, ChartOfAccounts chart, Books books) {
        this.queries = queries;
        this.chart = chart;
        this.books = books;
    }

    /** A visit's balance by service line and type of cost: debit above zero, credit below; never zero. */
    public record VisitBalance(
            @Nullable ServiceLineId serviceLine, @Nullable CostType costType, Money amount) {}

    /**
     * A period's sum of entries: debit above zero, credit below.
     *
     * @param  fromFinding whether it is the sum of the entries of work that came from a finding, or of the others
     */
    public record LineBalance(
            AccountRef account,
            @Nullable ServiceLineId serviceLine,
            @Nullable CostType costType,
            boolean fromFinding,
            Money amount) {}

    /** What the visit has on the account now; the caller's transaction sees its own postings. */
    @Transactional
    public List<VisitBalance> ofVisit(AccountRole account, VisitId visit) {
        return queries.visitBalances(chart.account(account).code(), visit).stream()
                .map(b -> new VisitBalance(b.serviceLine(), b.costType(), books.money(b.balance())))
                .toList();
    }

    /** What each of the visits has on the account now; a visit without entries there is absent. */
    @Transactional
    public Map<VisitId, Money> ofVisits(AccountRole account, List<VisitId> visits) {
        Map<VisitId, Money> totals = new LinkedHashMap<>();
        if (!visits.isEmpty()) {
            queries.visitTotals(chart.account(account).code(), visits)
                    .forEach(t -> totals.put(t.visit(), books.money(t.balance())));
        }
        return totals;
    }

    /** What customers have on the account from the first to the last day: debit above zero, credit below. */
    @Transactional
    public Money ofCustomers(AccountRole account, Collection<CustomerId> customers, LocalDate from, LocalDate to) {
        return books.money(
                customers.isEmpty()
                        ? BigDecimal.ZERO
                        : queries.sumOfCustomers(
                                customers, chart.account(account).code(), from, to));
    }

    /** The sums of the accounts' entries from the first to the last day, accounts named as they were asked for. */
    @Transactional
    public List<LineBalance> byServiceLine(List<? extends AccountRef> accounts, LocalDate from, LocalDate to) {
        Map<String, AccountRef> asked = new LinkedHashMap<>();
        for (AccountRef account : accounts) {
            AccountRow row = chart.account(account);
            asked.put(row.code(), account);
        }
        return queries.lineBalances(List.copyOf(asked.keySet()), from, to).stream()
                .map(b -> new LineBalance(
                        asked.getOrDefault(b.code(), new AccountCode(b.code())),
                        b.serviceLine(),
                        b.costType(),
                        b.found(),
                        books.money(b.balance())))
                .toList();
    }

    /** A month's sum of a service line's entries on an account: debit above zero, credit below. */
    public record MonthBalance(AccountRole account, ServiceLineId serviceLine, YearMonth month, Money amount) {}

    /** The sums of the accounts' entries by service line and month; entries without a service line are left out. */
    @Transactional
    public List<MonthBalance> byMonth(List<AccountRole> accounts, YearMonth from, YearMonth to) {
        Map<String, AccountRole> asked = new LinkedHashMap<>();
        accounts.forEach(account -> asked.put(chart.account(account).code(), account));
        return queries.monthBalances(List.copyOf(asked.keySet()), from.atDay(1), to.atEndOfMonth()).stream()
                .map(b -> new MonthBalance(
                        Objects.requireNonNull(asked.get(b.code())),
                        b.serviceLine(),
                        YearMonth.of(b.year(), b.month()),
                        books.money(b.balance())))
                .toList();
    }
}
