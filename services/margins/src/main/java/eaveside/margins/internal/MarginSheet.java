package eaveside.margins.internal;

import eaveside.catalog.ServiceLine;
import eaveside.kernel.Decision;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.ledger.Account;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRef;
import eaveside.ledger.AccountRole;
import eaveside.ledger.CostType;
import eaveside.ledger.EntryFilter;
import eaveside.ledger.ReadBalances.LineBalance;
import eaveside.margins.Figure;
import eaveside.margins.Figure.Side;
import eaveside.margins.MarginReport;
import eaveside.margins.MarginReport.LineMargin;
import eaveside.margins.MarginReport.Unassigned;
import eaveside.margins.MarginReport.Variance;
import eaveside.margins.MarginRow;
import eaveside.margins.Period;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** Puts the report together from sums of entries; knows neither database nor container. */
@Decision
public final class MarginSheet {
    /** The accounts whose entries always name a service line. */
    public static final List<AccountRole> BY_LINE =
            List.of(AccountRole.REVENUE, AccountRole.COST_OF_SERVICES, AccountRole.NO_CHARGE_GIVEN);

    private final Period period;
    private final CurrencyUnit currency;
    private final List<Account> accounts;
    private final List<LineBalance> balances;

    /** @param  accounts of profit and loss */
    public MarginSheet(Period period, CurrencyUnit currency, List<Account> accounts, List<LineBalance> balances) {
        this.period = period;
        this.currency = currency;
        this.accounts = List.copyOf(accounts);
        this.balances = List.copyOf(balances);
    }

    public MarginReport report(List<ServiceLine> lines) {
        List<LineMargin> rows = lines.stream()
                .filter(line -> balances.stream()
                        .anyMatch(b -> line.id().equals(b.serviceLine()) && b.account() instanceof AccountRole))
                .map(line -> new LineMargin(line.id(), line.code(), line.name(), row(line.id())))
                .toList();
        List<AccountRef> all = new ArrayList<>();
        accounts.forEach(a -> all.add(a.code()));
        Figure result = Figure.of(sum(b -> b.account() != AccountRole.NO_CHARGE_GIVEN), filter(all, null), Side.CREDIT);
        List<Unassigned> unassigned = unassigned();
        return new MarginReport(period, rows, row(null), unassigned, uncharged(unassigned), result);
    }

    /** Of a service line, or of all of them together. */
    private MarginRow row(@Nullable ServiceLineId line) {
        EntryFilter revenue = filter(List.of(AccountRole.REVENUE), line);
        Money margin = sum(b -> b.account() == AccountRole.REVENUE && isOf(b, line))
                .plus(sum(b -> b.account() == AccountRole.COST_OF_SERVICES && isOf(b, line)));
        return new MarginRow(
                Figure.of(sum(b -> b.account() == AccountRole.REVENUE && isOf(b, line)), revenue, Side.CREDIT),
                cost(CostType.LABOR, line),
                cost(CostType.CONSUMABLES, line),
                cost(CostType.TRAVEL, line),
                cost(CostType.OVERHEAD, line),
                Figure.of(
                        margin, filter(List.of(AccountRole.REVENUE, AccountRole.COST_OF_SERVICES), line), Side.CREDIT),
                Figure.of(
                        sum(b -> b.account() == AccountRole.NO_CHARGE_GIVEN && isOf(b, line)),
                        filter(List.of(AccountRole.NO_CHARGE_GIVEN), line),
                        Side.DEBIT),
                Figure.of(
                        sum(b -> b.account() == AccountRole.REVENUE && b.fromFinding() && isOf(b, line)),
                        revenue.whichCameFromFindings(),
                        Side.CREDIT));
    }

    private Figure cost(CostType type, @Nullable ServiceLineId line) {
        return Figure.of(
                sum(b -> b.account() == AccountRole.COST_OF_SERVICES && b.costType() == type && isOf(b, line)),
                filter(List.of(AccountRole.COST_OF_SERVICES), line).as(type),
                Side.DEBIT);
    }

    /** An applied and its actual accounts are shown as the variance where they meet, whether the month is closed or not. */
    private List<Unassigned> unassigned() {
        Map<AccountCode, List<AccountRef>> groups = new LinkedHashMap<>();
        for (Account account : accounts) {
            AccountCode meeting = account.variance();
            groups.computeIfAbsent(meeting == null ? account.code() : meeting, code -> new ArrayList<>())
                    .add(account.code());
        }
        List<Unassigned> rows = new ArrayList<>();
        for (Account account : accounts) {
            List<AccountRef> group = groups.get(account.code());
            if (group == null || balances.stream().noneMatch(b -> group.contains(b.account()))) {
                continue;
            }
            rows.add(new Unassigned(
                    account.code().value(),
                    account.name(),
                    group.size() > 1 ? variance(group) : null,
                    account.costType(),
                    Figure.of(sum(b -> group.contains(b.account())), filter(group, null), Side.DEBIT)));
        }
        return rows;
    }

    private Variance variance(List<AccountRef> group) {
        List<AccountRef> applied = new ArrayList<>();
        List<AccountRef> actual = new ArrayList<>();
        for (Account account : accounts) {
            if (group.contains(account.code())) {
                (account.applied() ? applied : actual).add(account.code());
            }
        }
        return new Variance(
                Figure.of(sum(b -> actual.contains(b.account())), filter(actual, null), Side.DEBIT),
                Figure.of(sum(b -> applied.contains(b.account())), filter(applied, null), Side.CREDIT));
    }

    private MarginRow uncharged(List<Unassigned> unassigned) {
        return new MarginRow(
                together(unassigned, u -> u.type() == null, Side.CREDIT),
                together(unassigned, u -> u.type() == CostType.LABOR, Side.DEBIT),
                together(unassigned, u -> u.type() == CostType.CONSUMABLES, Side.DEBIT),
                together(unassigned, u -> u.type() == CostType.TRAVEL, Side.DEBIT),
                together(unassigned, u -> u.type() == CostType.OVERHEAD, Side.DEBIT),
                together(unassigned, u -> true, Side.CREDIT),
                together(unassigned, u -> false, Side.DEBIT),
                together(unassigned, u -> false, Side.CREDIT));
    }

    private Figure together(List<Unassigned> unassigned, Predicate<Unassigned> which, Side side) {
        List<Figure> costs =
                unassigned.stream().filter(which).map(Unassigned::cost).toList();
        // Without accounts a filter is of all of them; revenue always has its line, so that this one finds nothing.
        EntryFilter opens = costs.isEmpty()
                ? filter(List.of(AccountRole.REVENUE), null).withoutLine()
                : filter(
                        costs.stream()
                                .flatMap(cost -> cost.opens().accounts().stream())
                                .toList(),
                        null);
        return Figure.of(
                Money.sum(currency, costs.stream().map(Figure::ledgerSum).toList()), opens, side);
    }

    private EntryFilter filter(List<? extends AccountRef> of, @Nullable ServiceLineId line) {
        EntryFilter all = EntryFilter.of(of, period.from(), period.to());
        return line == null ? all : all.on(line);
    }

    private static boolean isOf(LineBalance balance, @Nullable ServiceLineId line) {
        return line == null || line.equals(balance.serviceLine());
    }

    private Money sum(Predicate<LineBalance> which) {
        return Money.sum(
                currency,
                balances.stream().filter(which).map(LineBalance::amount).toList());
    }
}
