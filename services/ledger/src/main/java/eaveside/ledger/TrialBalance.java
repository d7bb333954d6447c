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
public record TrialBalance(
        LocalDate from, LocalDate to, List<Row> accounts, Sides opening, Sides change, Sides closing) {
    /** An account's line; an income or expense account has what it gathered since the books began. */
    public record Row(AccountCode account, String name, AccountType type, Money opening, Money change, Money closing) {
        public Row {
            if (!opening.plus(change).equals(closing)) {
                throw new LedgerRefusal.OutOfBalance(
                        closing.minus(opening.plus(change)).toString());
            }
        }

        Row(AccountCode account, String name, AccountType type, Money opening, Money change) {
            this(account, name, type, opening, change, opening.plus(change));
        }
    }

    /** The sums of the debit and of the credit balances of a column, both above zero. */
    public record Sides(Money debit, Money credit) {
        public Sides {
            if (!debit.equals(credit)) {
                throw new LedgerRefusal.OutOfBalance(debit.minus(credit).toString());
            }
        }
    }

    public TrialBalance {
        accounts = List.copyOf(accounts);
        if (to.isBefore(from)) {
            throw new LedgerRefusal.BadSpan(from, to);
        }
    }

    /** With the sums of the accounts. */
    static TrialBalance of(LocalDate from, LocalDate to, CurrencyUnit currency, List<Row> accounts) {
        return new TrialBalance(
                from,
                to,
                accounts,
                sides(currency, accounts, Row::opening),
                sides(currency, accounts, Row::change),
                sides(currency, accounts, Row::closing));
    }

    private static Sides sides(CurrencyUnit currency, List<Row> accounts, Function<Row, Money> column) {
        List<Money> amounts = accounts.stream().map(column).toList();
        return new Sides(
                Money.sum(currency, amounts.stream().filter(Money::isPositive).toList()),
                Money.sum(currency, amounts.stream().filter(Money::isNegative).toList())
                        .negated());
    }
}
