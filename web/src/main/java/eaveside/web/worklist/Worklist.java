package eaveside.web.worklist;

import eaveside.findings.OpenFindingLine;
import eaveside.findings.ReadFindings;
import eaveside.inventory.ReadStock;
import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.Money;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.ReadBalances;
import eaveside.pricing.QuoteStatus;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.Difference;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReadVisits;
import eaveside.visits.Visit;
import eaveside.web.Names;
import eaveside.web.View;
import eaveside.web.worklist.Waiting.Kind;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Collects what waits from every module, what has waited longest first. Each kind is read up to a bound, oldest first. */
@Dependent
class Worklist {
    private final ReadQuotes readQuotes;
    private final ReadVisits readVisits;
    private final ReadSheets readSheets;
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
            ReadInvoices readInvoices,
            ReadFindings readFindings,
            ReadStock readStock,
            ReadBalances readBalances,
            Books books,
            Names names) {
        this.readQuotes = readQuotes;
        this.readVisits = readVisits;
        this.readSheets = readSheets;
        this.readInvoices = readInvoices;
        this.readFindings = readFindings;
        this.readStock = readStock;
        this.readBalances = readBalances;
        this.books = books;
        this.names = names;
    }

    List<Waiting> waiting(View view, int most) {
        List<Waiting> all = new ArrayList<>();
        quotes(view, most, all);
        visits(view, most, all);
        differences(view, most, all);
        money(view, most, all);
        findings(view, most, all);
        stock(view, all);
        all.sort(Comparator.comparing(Waiting::since));
        return all;
    }

    private void quotes(View view, int most, List<Waiting> all) {
        for (ReadQuotes.Summary quote : readQuotes.open(null, most).rows()) {
            boolean draft = quote.status() == QuoteStatus.DRAFT;
            all.add(new Waiting(
                    Kind.QUOTE,
                    quote.madeOn(),
                    view.t(
                            draft ? "worklist.quote-draft" : "worklist.quote-offered",
                            String.valueOf(quote.number()),
                            names.customer(quote.customer()),
                            view.shortDate(quote.validUntil())),
                    quote.total(),
                    "/quotes/" + quote.id(),
                    view.t(draft ? "worklist.finish" : "worklist.ask")));
        }
    }

    private void visits(View view, int most, List<Waiting> all) {
        LocalDate today = view.today();
        for (Visit.Summary visit : readVisits.planned(null, most).rows()) {
            if (visit.date().isBefore(today)) {
                all.add(new Waiting(
                        Kind.PLAN,
                        visit.date(),
                        view.t("worklist.visit-late", names.customer(visit.customer()), view.shortDate(visit.date())),
                        null,
                        "/visits/" + visit.id(),
                        view.t("worklist.replan")));
            }
        }
        List<Visit.Summary> done = readVisits.doneUnbilled(null, most).rows();
        Map<VisitId, Money> cost = readBalances.ofVisits(
                AccountRole.WORK_IN_PROGRESS,
                done.stream().map(Visit.Summary::id).toList());
        for (Visit.Summary visit : done) {
            LocalDate doneOn = visit.doneOn() == null ? visit.date() : visit.doneOn();
            all.add(new Waiting(
                    Kind.BILL,
                    doneOn,
                    view.t("worklist.visit-done", names.customer(visit.customer()), view.shortDate(doneOn)),
                    cost.getOrDefault(visit.id(), books.zero()),
                    "/visits/" + visit.id(),
                    view.t("worklist.bill")));
        }
    }

    private void differences(View view, int most, List<Waiting> all) {
        Map<VisitId, Integer> open = new LinkedHashMap<>();
        for (Difference difference : readSheets.undecided(null, most).rows()) {
            open.merge(difference.visit(), 1, Integer::sum);
        }
        open.forEach((id, count) -> {
            Visit visit = readVisits.visit(id);
            LocalDate since = visit.doneOn() == null ? visit.date() : visit.doneOn();
            all.add(new Waiting(
                    Kind.DECIDE,
                    since,
                    view.t("worklist.differences", count, names.customer(visit.customer())),
                    null,
                    "/visits/" + id,
                    view.t("worklist.decide")));
        });
    }

    private void money(View view, int most, List<Waiting> all) {
        for (ReadInvoices.Row invoice : readInvoices.outstanding(null, most).rows()) {
            boolean overdue = invoice.dueDate().isBefore(view.today());
            all.add(new Waiting(
                    Kind.MONEY,
                    invoice.date(),
                    view.t(
                            overdue ? "worklist.invoice-overdue" : "worklist.invoice-open",
                            String.valueOf(invoice.number()),
                            invoice.customerName(),
                            view.shortDate(invoice.dueDate())),
                    invoice.open(),
                    "/invoices/" + invoice.id(),
                    view.t(overdue ? "worklist.chase" : "worklist.look")));
        }
    }

    private void findings(View view, int most, List<Waiting> all) {
        for (OpenFindingLine finding : readFindings.open(null, most).rows()) {
            all.add(new Waiting(
                    Kind.FINDING,
                    finding.openedAt().atZone(view.zone()).toLocalDate(),
                    view.t(
                            finding.answers() == 0 ? "worklist.finding-new" : "worklist.finding-open",
                            finding.kindName(),
                            names.customer(finding.customer())),
                    null,
                    "/findings/" + finding.id(),
                    view.t(finding.answers() == 0 ? "worklist.answer" : "worklist.follow-up")));
        }
    }

    private void stock(View view, List<Waiting> all) {
        for (ReadStock.Shortage shortage : readStock.belowMinimum()) {
            all.add(new Waiting(
                    Kind.STOCK,
                    view.today(),
                    view.t(
                            "worklist.stock-low",
                            shortage.item().name(),
                            shortage.place().name(),
                            view.quantity(shortage.held()),
                            view.quantity(shortage.minimum())),
                    null,
                    "/stock?place=" + shortage.place().id(),
                    view.t("worklist.reorder")));
        }
    }
}
