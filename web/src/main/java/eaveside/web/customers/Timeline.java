package eaveside.web.customers;

import eaveside.findings.FindingView;
import eaveside.findings.ReadFindings;
import eaveside.invoicing.InvoiceSummary;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadPayments;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.pricing.QuoteSummary;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.ReadVisits;
import eaveside.visits.Visit;
import eaveside.web.Names;
import eaveside.web.View;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Everything that happened with a customer and is planned, in one list, the newest first. */
@Shared
public class Timeline {
    @Inject
    ReadVisits readVisits;

    @Inject
    ReadQuotes readQuotes;

    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadPayments readPayments;

    @Inject
    ReadFindings readFindings;

    @Inject
    Names names;

    /** What sort of thing; also the filters of the list. */
    public enum Type {
        WORK,
        MONEY,
        FINDING
    }

    /** How a status is shown beside its word. */
    public enum Tone {
        PLAIN,
        GOOD,
        COPPER,
        BAD
    }

    /**
     * A row.
     *
     * @param  words  what it is; leads on
     * @param  detail what tells it from others; may be empty
     * @param  amount null where there is none
     */
    public record Row(
            LocalDate date,
            Type type,
            String words,
            String detail,
            String status,
            Tone tone,
            @Nullable Money amount,
            String href) {}

    /** Of one type or, for null, of all; each source gives its newest, so the newest of all are among them. */
    List<Row> of(View view, CustomerId customer, @Nullable Type shown, int most) {
        return Stream.of(Type.values())
                .filter(type -> shown == null || shown == type)
                .flatMap(type -> switch (type) {
                    case WORK -> Stream.concat(visits(view, customer, most), quotes(view, customer, most));
                    case MONEY -> Stream.concat(invoices(view, customer, most), payments(view, customer, most));
                    case FINDING -> findings(view, customer, most);
                })
                .sorted(Comparator.comparing(Row::date).reversed())
                .limit(most)
                .toList();
    }

    private Stream<Row> visits(View view, CustomerId customer, int most) {
        List<Visit.Summary> visits = readVisits.newestOf(List.of(customer), most);
        names.lookUpVisits(visits);
        return visits.stream()
                .map(visit -> new Row(
                        visit.completedOn() == null ? visit.date() : visit.completedOn(),
                        Type.WORK,
                        view.t("customers.timeline.visit", names.site(visit.site())),
                        names.users(visit.crew()),
                        view.t("visits.status", visit.status()),
                        tone(view, visit),
                        null,
                        "/visits/" + visit.id()));
    }

    private static Tone tone(View view, Visit.Summary visit) {
        return switch (visit.status()) {
            case SCHEDULED -> visit.date().isBefore(view.today()) ? Tone.BAD : Tone.PLAIN;
            case COMPLETED -> Tone.COPPER;
            case BILLED -> Tone.GOOD;
            case CANCELED, CLOSED_NOT_BILLED -> Tone.PLAIN;
        };
    }

    private Stream<Row> quotes(View view, CustomerId customer, int most) {
        return readQuotes.newestOf(List.of(customer), most).stream()
                .map(quote -> new Row(
                        quote.date(),
                        Type.WORK,
                        view.t("customers.timeline.quote", String.valueOf(quote.number())),
                        quote.siteName(),
                        quote.isExpiredOn(view.today())
                                ? view.t("customers.timeline.expired")
                                : view.t("quotes.status", quote.status()),
                        tone(view, quote),
                        quote.total(),
                        "/quotes/" + quote.id()));
    }

    private static Tone tone(View view, QuoteSummary quote) {
        return switch (quote.status()) {
            case DRAFT, SENT -> quote.isExpiredOn(view.today()) ? Tone.BAD : Tone.COPPER;
            case ACCEPTED -> Tone.GOOD;
            case DECLINED -> Tone.PLAIN;
        };
    }

    private Stream<Row> invoices(View view, CustomerId customer, int most) {
        return readInvoices.ofCustomer(customer, null, most).rows().stream().map(invoice -> invoice(view, invoice));
    }

    private static Row invoice(View view, InvoiceSummary invoice) {
        String status;
        Tone tone;
        if (invoice.credited()) {
            status = view.t("customers.timeline.credited");
            tone = Tone.PLAIN;
        } else if (invoice.open().isZero()) {
            status = view.t("customers.timeline.paid");
            tone = Tone.GOOD;
        } else if (invoice.isPastDue()) {
            status = view.t("customers.timeline.past-due", view.money(invoice.open()), invoice.daysPastDue());
            tone = Tone.BAD;
        } else {
            status = view.t("customers.timeline.due", view.money(invoice.open()), view.shortDate(invoice.dueDate()));
            tone = Tone.COPPER;
        }
        return new Row(
                invoice.date(),
                Type.MONEY,
                view.t("customers.timeline.invoice", String.valueOf(invoice.number())),
                "",
                status,
                tone,
                invoice.gross(),
                "/invoices/" + invoice.id());
    }

    private Stream<Row> payments(View view, CustomerId customer, int most) {
        return readPayments.payments(customer, null, most).rows().stream()
                .map(payment -> new Row(
                        payment.date(),
                        Type.MONEY,
                        view.t("customers.timeline.payment", String.valueOf(payment.number())),
                        payment.reference().isEmpty()
                                ? view.t("invoices.payment.method", payment.method())
                                : payment.reference(),
                        payment.reversedBy() == null
                                ? view.t("customers.timeline.received")
                                : view.t("customers.timeline.reversed"),
                        payment.reversedBy() == null ? Tone.GOOD : Tone.PLAIN,
                        payment.amount(),
                        "/payments/" + payment.id()));
    }

    private Stream<Row> findings(View view, CustomerId customer, int most) {
        return readFindings.ofCustomer(customer, most).stream()
                .map(finding -> new Row(
                        finding.openedAt().atZone(view.zone()).toLocalDate(),
                        Type.FINDING,
                        view.t("customers.timeline.finding", finding.type().name()),
                        finding.note(),
                        view.t("findings.status", finding.status())
                                + (finding.status() == FindingView.Status.OPEN
                                        ? ", " + finding.severity().name()
                                        : ""),
                        finding.status() == FindingView.Status.OPEN ? Tone.COPPER : Tone.PLAIN,
                        null,
                        "/findings/" + finding.id()));
    }
}
