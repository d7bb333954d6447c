package eaveside.web.worklist;

import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.ReadBalances;
import eaveside.visits.ReadVisits;
import eaveside.web.Link;
import eaveside.web.View;
import eaveside.worklist.DueItem;
import eaveside.worklist.DueOrder;
import eaveside.worklist.DueTotal;
import eaveside.worklist.DueType;
import eaveside.worklist.ReadWorklist;
import jakarta.inject.Inject;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Puts what is due into words, with the next step of each. */
@Shared
public class Worklist {
    @Inject
    ReadWorklist readWorklist;

    @Inject
    ReadVisits readVisits;

    @Inject
    ReadBalances readBalances;

    @Inject
    Books books;

    /**
     * One type of what is due.
     *
     * @param  rows  the first of them
     * @param  count how many there are, whatever is shown
     * @param  amount in sales value, of those of which it is known
     */
    public record Group(DueType type, List<Row> rows, long count, Money amount) {
        public Group {
            rows = List.copyOf(rows);
        }

        /** How many are not shown. */
        public long left() {
            return count - rows.size();
        }
    }

    /**
     * One thing in words.
     *
     * @param  href where its next step is done
     * @param  next the key of the next step's label
     */
    public record Row(DueItem item, String words, String href, String next) {}

    /** What all work that is completed and not billed has cost to date; null for who may not see costs, who is spared the reading. */
    @Nullable
    Money costNotBilled(View view) {
        return view.seesCosts()
                ? Money.sum(
                        books.currency(),
                        readBalances
                                .ofVisits(AccountRole.WORK_IN_PROGRESS, readVisits.allCompletedNotBilled())
                                .values())
                : null;
    }

    /** What is due, the first of each type or of one alone. */
    List<Group> due(View view, Map<DueType, DueTotal> totals, @Nullable DueType shown, DueOrder order, int most) {
        Map<DueType, List<Row>> rows = readWorklist.items(shown, order, most).stream()
                .map(item -> row(view, item))
                .collect(Collectors.groupingBy(row -> row.item().key().type()));
        return Arrays.stream(DueType.values())
                .filter(rows::containsKey)
                .map(type -> {
                    DueTotal total = totals.getOrDefault(type, new DueTotal(0, books.zero()));
                    return new Group(type, rows.getOrDefault(type, List.of()), total.count(), total.amount());
                })
                .toList();
    }

    List<Row> aside(View view, int most) {
        return readWorklist.aside(most).stream().map(item -> row(view, item)).toList();
    }

    private static Row row(View view, DueItem item) {
        return new Row(item, words(view, item), href(item), next(item));
    }

    private static String words(View view, DueItem item) {
        String number = String.valueOf(item.number());
        String key = "worklist.words." + item.key().type();
        return switch (item.key().type()) {
            case SHEET -> view.t(item.urgent() ? key + ".urgent" : key, item.name(), view.shortDate(item.day()));
            case NOTE -> view.t(key, item.name());
            case DECIDE, RETURN -> view.t(key, item.number() == null ? 0 : item.number(), item.name());
            case BILL -> view.t(item.number() == null ? key : key + ".quoted", item.name(), number);
            case DRAFT ->
                view.t(item.name().isEmpty() ? key : key + ".reference", view.shortDate(item.day()), item.name());
            case PAST_DUE -> view.t(key, number, view.shortDate(item.day()));
            case ACCEPTED -> view.t(key, number, item.name());
            case LATE -> view.t(key, view.shortDate(item.day()), item.name());
            case QUOTE ->
                view.t(
                        item.detail().equals("DRAFT") ? key + ".draft" : item.urgent() ? key + ".expired" : key,
                        number,
                        item.name(),
                        view.shortDate(item.day()));
            case FINDING -> item.urgent() ? item.name() : view.t(key, item.name(), item.detail());
            case STOCK ->
                view.t(
                        key,
                        item.name(),
                        item.detail(),
                        item.held() == null ? "" : view.quantity(item.held()),
                        item.wanted() == null ? "" : view.quantity(item.wanted()));
        };
    }

    private static String href(DueItem item) {
        return switch (item.key().type()) {
            case SHEET -> "/visits/" + item.opens() + "/sent/" + item.key().thing();
            case NOTE, DECIDE, BILL, LATE -> "/visits/" + item.opens();
            case DRAFT, PAST_DUE -> "/invoices/" + item.opens();
            case ACCEPTED, QUOTE -> "/quotes/" + item.opens();
            case RETURN -> "/visits/new?return=" + item.opens();
            case FINDING -> "/findings/" + item.opens();
            case STOCK -> new Link("/stock").with("location", item.opens()).toString();
        };
    }

    private static String next(DueItem item) {
        return "worklist.next."
                + (item.key().type() == DueType.QUOTE && item.detail().equals("DRAFT")
                        ? "finish"
                        : item.key().type().name());
    }
}
