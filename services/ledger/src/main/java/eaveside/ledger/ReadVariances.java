package eaveside.ledger;

import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.ledger.internal.AccountRow;
import eaveside.ledger.internal.LedgerQueries;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What was really spent on labor, travel and overhead against what was absorbed into services. Nothing is moved for it:
 * wages, vehicles and rent keep their entries, and the difference is read from them, in an open month as in a closed one.
 */
@Shared
public class ReadVariances {
    private final LedgerQueries queries;
    private final Books books;

    @Inject
    public ReadVariances(LedgerQueries queries, Books books) {
        this.queries = queries;
        this.books = books;
    }

    /**
     * A pair of the chart in a span of days; amounts in the company's currency, costs above zero.
     *
     * @param  account      that names the pair
     * @param  actual       spent by nature, with what was entered on the naming account itself
     * @param  applied      absorbed into services
     * @param  variance     spent and not absorbed; below zero where more was absorbed than spent
     * @param  actualCodes  the accounts that {@code actual} is the sum of
     * @param  appliedCodes the accounts that {@code applied} is the sum of
     */
    public record Variance(
            AccountCode account,
            String name,
            Money actual,
            Money applied,
            Money variance,
            List<AccountCode> actualCodes,
            List<AccountCode> appliedCodes) {
        public Variance {
            actualCodes = List.copyOf(actualCodes);
            appliedCodes = List.copyOf(appliedCodes);
            if (!variance.equals(actual.minus(applied))) {
                throw new LedgerRefusal.OutOfBalance(
                        variance.minus(actual.minus(applied)).toString());
            }
        }
    }

    /** Every pair of the chart, by code, from the first to the last day; refuses a last day before the first. */
    @Transactional
    public List<Variance> between(LocalDate from, LocalDate to) {
        if (to.isBefore(from)) {
            throw new LedgerRefusal.BadSpan(from, to);
        }
        Map<String, BigDecimal> change = new HashMap<>();
        queries.balances(from, to).forEach(b -> change.put(b.code(), b.change()));
        List<AccountRow> rows = queries.accounts();
        List<Variance> variances = new ArrayList<>();
        for (AccountRow meeting : rows) {
            List<AccountCode> actual = new ArrayList<>();
            List<AccountCode> applied = new ArrayList<>();
            for (AccountRow row : rows) {
                Account account = row.toAccount();
                if (new AccountCode(meeting.code()).equals(account.variance())) {
                    (account.applied() ? applied : actual).add(account.code());
                }
            }
            if (!actual.isEmpty() || !applied.isEmpty()) {
                actual.add(new AccountCode(meeting.code()));
                Money spent = sum(change, actual);
                Money absorbed = sum(change, applied).negated();
                variances.add(new Variance(
                        new AccountCode(meeting.code()),
                        meeting.name(),
                        spent,
                        absorbed,
                        spent.minus(absorbed),
                        actual,
                        applied));
            }
        }
        return variances;
    }

    private Money sum(Map<String, BigDecimal> change, List<AccountCode> codes) {
        return Money.sum(
                books.currency(),
                codes.stream()
                        .map(code -> books.money(change.getOrDefault(code.value(), BigDecimal.ZERO)))
                        .toList());
    }
}
