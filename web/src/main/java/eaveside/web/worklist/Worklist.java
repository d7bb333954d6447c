package eaveside.web.worklist;

import eaveside.findings.ReadFindings;
import eaveside.inventory.ReadStock;
import eaveside.invoicing.Aging;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadInvoices.Outstanding;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.ReadBalances;
import eaveside.pricing.QuoteStatus;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.ReadSentSheets;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReadVisits;
import eaveside.visits.VisitQuery;
import eaveside.visits.VisitsShown;
import eaveside.web.Names;
import eaveside.web.View;
import eaveside.web.worklist.WorklistItem.Type;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Puts together what waits, of every group: what has waited longest first. */
@Shared
public class Worklist {
    @Inject
    ReadSentSheets readSentSheets;

    @Inject
    ReadQuotes readQuotes;

    @Inject
    ReadVisits readVisits;

    @Inject
    ReadSheets readSheets;

    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadFindings readFindings;

    @Inject
    ReadStock readStock;

    @Inject
    ReadBalances readBalances;

    @Inject
    Books books;

    @Inject
    Names names;

    /**
     * What waits.
     *
     * @param  longest     what is shown: first what was sent from the site and nobody has read, for it may be urgent; then what
     *                    has waited longest
     * @param  counts      of each type that has any, whatever is shown
     * @param  toBill      cost of all work that is done and not billed; null for who may not see costs
     * @param  outstanding what customers owe in all
     * @param  pastDue     how much of that is past due
     */
    public record Reading(
            List<WorklistItem> longest,
            Map<Type, Long> counts,
            @Nullable Money toBill,
            Money outstanding,
            Money pastDue) {
        /** How much there is of a type or, for null, in all. */
        public long of(@Nullable Type type) {
            return type == null
                    ? counts.values().stream().mapToLong(Long::longValue).sum()
                    : counts.getOrDefault(type, 0L);
        }
    }

    /**
     * One group of what waits.
     *
     * @param  longest at most so many, what has waited longest first
     */
    private record Group(Type type, IntFunction<List<WorklistItem>> longest) {
        static <R> Group of(Type type, IntFunction<List<R>> longest, Function<R, WorklistItem> waiting) {
            return new Group(
                    type, most -> longest.apply(most).stream().map(waiting).toList());
        }
    }

    /** Of one type or, for null, of all; shows at most so many. What is due is what the viewer's menu counts. */
    Reading read(View view, @Nullable Type shown, int most) {
        Map<VisitId, Money> costToBill = costToBill(view);
        Outstanding pastDue = readInvoices.pastDueInAll();
        List<Group> groups = Stream.of(
                        sentSheets(view),
                        openQuotes(view),
                        lateVisits(view),
                        visitsToBill(view, costToBill),
                        scopeChanges(view),
                        pastDueInvoices(view),
                        openFindings(view),
                        lowStock(view))
                .filter(group -> view.due().containsKey(group.type()))
                .toList();
        List<WorklistItem> longest = groups.stream()
                .filter(group -> shown == null || shown == group.type())
                .flatMap(group ->
                        group.longest().apply((int) Math.min(most, view.due().getOrDefault(group.type(), 0L))).stream())
                .sorted(Comparator.comparing((WorklistItem w) -> w.type() != Type.SHEET)
                        .thenComparing(WorklistItem::since))
                .limit(most)
                .toList();
        names.lookUp(longest.stream()
                .map(WorklistItem::customer)
                .filter(Objects::nonNull)
                .distinct()
                .toList());
        Map<Type, Long> counts = new EnumMap<>(Type.class);
        counts.putAll(view.due());
        return new Reading(
                longest,
                counts,
                view.cost(Money.sum(books.currency(), costToBill.values())),
                readInvoices.outstandingInAll().open(),
                pastDue.open());
    }

    /** What was sent from a site, did not become the visit's job sheet, and nobody has read. */
    private Group sentSheets(View view) {
        return Group.of(
                Type.SHEET,
                most -> {
                    var unread = readSentSheets.unread(most);
                    names.lookUpUsers(unread.stream().map(sheet -> sheet.by()));
                    return unread;
                },
                sheet -> new WorklistItem(
                        Type.SHEET,
                        day(view, sheet.at()),
                        sheet.customer(),
                        () -> view.t(
                                sheet.urgent() ? "worklist.sheet-urgent" : "worklist.sheet-sent",
                                names.user(sheet.by()),
                                names.customer(sheet.customer())),
                        null,
                        "/visits/" + sheet.visit() + "/sent/" + sheet.id(),
                        "worklist.read"));
    }

    /** Quotes to finish, and quotes that the customer has not accepted or declined. */
    private Group openQuotes(View view) {
        return Group.of(Type.QUOTE, most -> readQuotes.open(null, most).rows(), quote -> {
            boolean draft = quote.status() == QuoteStatus.DRAFT;
            return new WorklistItem(
                    Type.QUOTE,
                    quote.date(),
                    quote.customer(),
                    () -> view.t(
                            draft ? "worklist.quote-draft" : "worklist.quote-sent",
                            String.valueOf(quote.number()),
                            names.customer(quote.customer()),
                            view.shortDate(quote.validUntil())),
                    quote.total(),
                    "/quotes/" + quote.id(),
                    draft ? "worklist.finish" : "worklist.follow-up");
        });
    }

    /**
     * Visits whose day has passed without a signed job sheet. Scheduled visits come the earliest first, so that the first so
     * many are those whose day has passed.
     */
    private Group lateVisits(View view) {
        return Group.of(
                Type.PLAN,
                most -> readVisits
                        .list(VisitQuery.of(VisitsShown.SCHEDULED), null, most)
                        .rows(),
                visit -> new WorklistItem(
                        Type.PLAN,
                        visit.date(),
                        visit.customer(),
                        () -> view.t(
                                "worklist.visit-late", names.customer(visit.customer()), view.shortDate(visit.date())),
                        null,
                        "/visits/" + visit.id(),
                        "worklist.reschedule"));
    }

    /** Work that is completed and not billed. */
    private Group visitsToBill(View view, Map<VisitId, Money> cost) {
        return Group.of(
                Type.BILL,
                most -> readVisits
                        .list(VisitQuery.of(VisitsShown.COMPLETED), null, most)
                        .rows(),
                visit -> {
                    LocalDate completedOn = visit.completedOn() == null ? visit.date() : visit.completedOn();
                    return new WorklistItem(
                            Type.BILL,
                            completedOn,
                            visit.customer(),
                            () -> view.t(
                                    view.seesCosts() ? "worklist.visit-done-cost" : "worklist.visit-done",
                                    names.customer(visit.customer()),
                                    view.shortDate(completedOn)),
                            view.cost(cost.getOrDefault(visit.id(), books.zero())),
                            "/visits/" + visit.id(),
                            "worklist.bill");
                });
    }

    /**
     * Of each visit that is completed and not billed, also one that nothing was charged to. Who may not see costs is spared the
     * reading.
     */
    private Map<VisitId, Money> costToBill(View view) {
        List<VisitId> visits = readVisits.allCompletedNotBilled();
        Map<VisitId, Money> charged =
                view.seesCosts() ? readBalances.ofVisits(AccountRole.WORK_IN_PROGRESS, visits) : Map.of();
        return visits.stream()
                .collect(Collectors.toMap(visit -> visit, visit -> charged.getOrDefault(visit, books.zero())));
    }

    /** Visits with scope changes to decide. */
    private Group scopeChanges(View view) {
        return Group.of(
                Type.DECIDE,
                readSheets::undecidedVisits,
                visit -> new WorklistItem(
                        Type.DECIDE,
                        visit.since(),
                        visit.customer(),
                        () -> view.t("worklist.scopeChanges", visit.scopeChanges(), names.customer(visit.customer())),
                        null,
                        "/visits/" + visit.visit(),
                        "worklist.decide"));
    }

    /** Past-due invoices only: before an invoice is, there is nothing to do about it. */
    private Group pastDueInvoices(View view) {
        return Group.of(
                Type.MONEY,
                most -> readInvoices.pastDue(null, most).rows(),
                invoice -> new WorklistItem(
                        Type.MONEY,
                        invoice.dueDate(),
                        invoice.customer(),
                        () -> view.t(
                                "worklist.invoice-past-due",
                                String.valueOf(invoice.number()),
                                invoice.customerName(),
                                view.shortDate(invoice.dueDate()),
                                view.t("invoices.aging", Aging.Bucket.of(invoice.dueDate(), view.today()))),
                        invoice.open(),
                        "/invoices/" + invoice.id(),
                        "worklist.follow-up"));
    }

    /** Findings that are not closed. */
    private Group openFindings(View view) {
        return Group.of(
                Type.FINDING,
                most -> readFindings.open(null, most).rows(),
                finding -> new WorklistItem(
                        Type.FINDING,
                        day(view, finding.openedAt()),
                        finding.customer(),
                        () -> view.t(
                                finding.actions() == 0 ? "worklist.finding-new" : "worklist.finding-open",
                                finding.typeName(),
                                names.customer(finding.customer())),
                        null,
                        "/findings/" + finding.id(),
                        "worklist.follow-up"));
    }

    /** Items of which a location holds less than their reorder point. */
    private Group lowStock(View view) {
        return Group.of(
                Type.STOCK,
                most -> readStock.belowReorderPoint(),
                shortage -> new WorklistItem(
                        Type.STOCK,
                        view.today(),
                        null,
                        () -> view.t(
                                "worklist.stock-low",
                                shortage.item().name(),
                                shortage.location().name(),
                                view.quantity(shortage.held()),
                                view.quantity(shortage.reorderPoint())),
                        null,
                        "/stock?location=" + shortage.location().id(),
                        "worklist.reorder"));
    }

    private static LocalDate day(View view, Instant at) {
        return at.atZone(view.zone()).toLocalDate();
    }
}
