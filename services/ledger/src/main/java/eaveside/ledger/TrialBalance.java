package eaveside.ledger;

import eaveside.kernel.Money;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;
import org.joda.money.CurrencyUnit;

/**
 * Every account with entries up to a day: what it had before the first day, what changed, and what it has after the last.
 * Debit is above zero and credit below; each column's debits and credits are equal.
 *
 * @param  from     first day of the change
 * @param  to       last day of the change; the closing balances are as of this day
 * @param  accounts by code
 */
public record TrialBalance(LocalDate from, LocalDate to, CurrencyUnit currency, List<Row> accounts) {
    /** An account's line; an income or expense account has what it gathered since the books began. */
    public record Row(AccountCode code, String name, AccountType type, Money opening, Money change) {
        public Money closing() {
            return opening.plus(change);
        }
    }

    /** The sums of the debit and of the credit balances of a column, both above zero. */
    public record Sides(Money debit, Money credit) {}

    public TrialBalance {
        accounts = List.copyOf(accounts);
        if (to.isBefore(from)) {
            throw new LedgerRefusal.BadSpan(from, to);
        }
        requireBalance(currency, accounts, Row::opening);
        requireBalance(currency, accounts, Row::change);
    }

    private static void requireBalance(CurrencyUnit currency, List<Row> accounts, Function<Row, Money> column) {
        Money off = Money.sum(currency, accounts.stream().map(column).toList());
        if (!off.isZero()) {
            throw new LedgerRefusal.OutOfBalance(off.toString());
        }
    }

    public Sides openings() {
        return sides(Row::opening);
    }

    public Sides changes() {
        return sides(Row::change);
    }

    public Sides closings() {
        return sides(Row::closing);
    }

    private Sides sides(Function<Row, Money> column) {
        List<Money> amounts = accounts.stream().map(column).toList();
        return new Sides(
                Money.sum(currency, amounts.stream().filter(Money::isPositive).toList()),
                Money.sum(currency, amounts.stream().filter(Money::isNegative).toList())
                        .negated());
    }
}
