package eaveside.web.worklist;

import eaveside.findings.ReadFindings;
import eaveside.inventory.ReadStock;
import eaveside.inventory.Shortage;
import eaveside.invoicing.Aging;
import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.Money;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.ReadBalances;
import eaveside.pricing.QuoteStatus;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.ReadSentSheets;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReadVisits;
import eaveside.web.Names;
import eaveside.web.View;
import eaveside.web.worklist.Waiting.Type;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Collects what waits from every module, what has waited longest first. */
@Dependent
class Worklist {
    private final ReadQuotes readQuotes;
    private final ReadVisits readVisits;
    private final ReadSheets readSheets;
    private final ReadSentSheets readSentSheets;
    private final ReadInvoices readInvoices;
    private final ReadFindings readFindings;
    private final ReadStock readStock;
    private final ReadBalances readBalances;
    private final Books books;
    private final Names names;

    @Inject
    Worklist(
            ReadQuotes readQuotes,
            ReadVisits readVisits,
            ReadSheets readSheets,
            ReadSentSheets readSentSheets,
            ReadInvoices readInvoices,
            ReadFindings readFindings,
            ReadStock readStock,
            ReadBalances readBalances,
            Books books,
            Names names) {
        this.readQuotes = readQuotes;
        this.readVisits = readVisits;
        this.readSheets = readSheets;
        this.readSentSheets = readSentSheets;
        this.readInvoices = readInvoices;
        this.readFindings = readFindings;
        this.readStock = readStock;
        this.readBalances = readBalances;
        this.books = books;
        this.names = names;
    }

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
    record Reading(
            List<Waiting> longest,
            Map<Type, Long> counts,
            @Nullable Money toBill,
            Money outstanding,
            Money pastDue) {
        long of(@Nullable Type type) {
            return type == null
                    ? counts.values().stream().mapToLong(Long::longValue).sum()
                    : counts.getOrDefault(type, 0L);
        }
    }

    /** Of one type or, for null, of all; shows at most so many. */
    Reading read(View view, @Nullable Type shown, int most) {
        List<VisitId> done = readVisits.allDoneUnbilled();
        Map<VisitId, Money> cost = readBalances.ofVisits(AccountRole.WORK_IN_PROGRESS, done);
        ReadInvoices.Outstanding owed = readInvoices.outstandingInAll();
        ReadInvoices.Outstanding pastDue = readInvoices.overdueInAll();
        List<Shortage> shortages = readStock.belowReorderPoint();
        Map<Type, Long> counts = new EnumMap<>(Type.class);
        counts.put(Type.SHEET, readSentSheets.countWaiting());
        counts.put(Type.QUOTE, readQuotes.countOpen());
        counts.put(Type.PLAN, readVisits.countScheduledBefore(view.today()));
        counts.put(Type.BILL, (long) done.size());
        counts.put(Type.DECIDE, readSheets.countUndecidedVisits());
        counts.put(Type.MONEY, pastDue.invoices());
        counts.put(Type.FINDING, readFindings.countOpen());
        counts.put(Type.STOCK, (long) shortages.size());
        counts.values().removeIf(count -> count == 0);

        List<Waiting> waiting = new ArrayList<>();
        for (Map.Entry<Type, Long> count : counts.entrySet()) {
            if (shown != null && shown != count.getKey()) {
                continue;
            }
            int size = (int) Math.min(most, count.getValue());
            waiting.addAll(
                    switch (count.getKey()) {
                        case SHEET -> sentSheets(view, size);
                        case QUOTE -> quotes(view, size);
                        case PLAN -> plans(view, size);
                        case BILL -> done(view, size, cost);
                        case DECIDE -> scopeChanges(view, size);
                        case MONEY -> money(view, size);
                        case FINDING -> findings(view, size);
                        case STOCK -> stock(view, shortages);
                    });
        }
        List<Waiting> longest = waiting.stream()
                .sorted(Comparator.comparing((Waiting w) -> w.type() != Type.SHEET)
                        .thenComparing(Waiting::since))
                .limit(most)
                .toList();
        names.lookUp(longest.stream()
                .map(Waiting::customer)
                .filter(Objects::nonNull)
                .distinct()
                .toList());
        return new Reading(
                longest, counts, view.cost(Money.sum(books.currency(), cost.values())), owed.open(), pastDue.open());
    }

    private List<Waiting> sentSheets(View view, int most) {
        return readSentSheets.waiting(most).stream()
                .map(sheet -> new Waiting(
                        Type.SHEET,
                        sheet.at().atZone(view.zone()).toLocalDate(),
                        sheet.customer(),
                        () -> view.t(
                                sheet.urgent() ? "worklist.sheet-urgent" : "worklist.sheet-sent",
                                names.user(sheet.by()),
                                names.customer(sheet.customer())),
                        null,
                        "/visits/" + sheet.visit() + "/sent/" + sheet.id(),
                        "worklist.read"))
                .toList();
    }

    private List<Waiting> quotes(View view, int most) {
        return readQuotes
                .open(null, most)
                .map(quote -> {
                    boolean draft = quote.status() == QuoteStatus.DRAFT;
                    return new Waiting(
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
                            draft ? "worklist.finish" : "worklist.ask");
                })
                .rows();
    }

    /** Planned visits come the earliest first, so that the first so many are those whose day has passed. */
    private List<Waiting> plans(View view, int most) {
        return readVisits
                .planned(null, most)
                .map(visit -> new Waiting(
                        Type.PLAN,
                        visit.date(),
                        visit.customer(),
                        () -> view.t(
                                "worklist.visit-late", names.customer(visit.customer()), view.shortDate(visit.date())),
                        null,
                        "/visits/" + visit.id(),
                        "worklist.replan"))
                .rows();
    }

    private List<Waiting> done(View view, int most, Map<VisitId, Money> cost) {
        return readVisits
                .doneUnbilled(null, most)
                .map(visit -> {
                    LocalDate completedOn = visit.completedOn() == null ? visit.date() : visit.completedOn();
                    return new Waiting(
                            Type.BILL,
                            completedOn,
                            visit.customer(),
                            () -> view.t(
                                    "worklist.visit-done",
                                    names.customer(visit.customer()),
                                    view.shortDate(completedOn)),
                            view.cost(cost.getOrDefault(visit.id(), books.zero())),
                            "/visits/" + visit.id(),
                            "worklist.bill");
                })
                .rows();
    }

    private List<Waiting> scopeChanges(View view, int most) {
        return readSheets.undecidedVisits(most).stream()
                .map(visit -> new Waiting(
                        Type.DECIDE,
                        visit.since(),
                        visit.customer(),
                        () -> view.t("worklist.scopeChanges", visit.scopeChanges(), names.customer(visit.customer())),
                        null,
                        "/visits/" + visit.visit(),
                        "worklist.decide"))
                .toList();
    }

    /** Past due only: before an invoice is, there is nothing to do about it. */
    private List<Waiting> money(View view, int most) {
        return readInvoices
                .overdue(null, most)
                .map(invoice -> new Waiting(
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
                        "worklist.chase"))
                .rows();
    }

    private List<Waiting> findings(View view, int most) {
        return readFindings
                .open(null, most)
                .map(finding -> {
                    boolean open = finding.actions() == 0;
                    return new Waiting(
                            Type.FINDING,
                            finding.openedAt().atZone(view.zone()).toLocalDate(),
                            finding.customer(),
                            () -> view.t(
                                    open ? "worklist.finding-new" : "worklist.finding-open",
                                    finding.typeName(),
                                    names.customer(finding.customer())),
                            null,
                            "/findings/" + finding.id(),
                            open ? "worklist.answer" : "worklist.follow-up");
                })
                .rows();
    }

    private static List<Waiting> stock(View view, List<Shortage> shortages) {
        return shortages.stream()
                .map(shortage -> new Waiting(
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
                        "worklist.reorder"))
                .toList();
    }
}
