package eaveside.invoicing;

import static eaveside.invoicing.WorkedCompany.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import eaveside.catalog.TaxCode;
import eaveside.findings.ActOnFinding;
import eaveside.findings.FindingAction;
import eaveside.findings.FindingActionId;
import eaveside.findings.ReadFindings;
import eaveside.kernel.FindingId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.PaymentId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteId;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.pricing.DraftQuote;
import eaveside.pricing.ExpectedTravel;
import eaveside.pricing.NewQuote;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteScope;
import eaveside.testing.Bench;
import eaveside.visits.ScheduleVisit;
import eaveside.visits.ScheduledLine;
import eaveside.visits.Scheduling;
import eaveside.visits.Visit;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Supplier;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** What is sent in the evening and again the next day is answered as it was the first time: today is no part of a command. */
class AfterMidnightIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static WorkedCompany company;

    @BeforeAll
    static void found() {
        company = new WorkedCompany(bench);
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    private static <T> T twice(Supplier<T> send) {
        LocalDate day = company.today();
        T first = send.get();
        bench.clock().forward(Duration.ofDays(1));
        assertNotEquals(day, company.today());
        assertEquals(first, send.get());
        return first;
    }

    @Test
    void an_invoice_draft() {
        Quantity hour = Quantity.of(1, Unit.HOUR);
        Draft draft = new Draft(
                InvoiceId.next(),
                0,
                company.customer,
                company.today(),
                "",
                "",
                List.of(new DraftLine(
                        InvoiceLineId.next(),
                        company.arrays,
                        "Moss off the steps",
                        hour,
                        ItemPrice.of(
                                new UnitPrice(CurrencyUnit.USD, usd("40.00").amount(), hour)),
                        List.of(),
                        new TaxCode("TAXED"))),
                List.of(),
                null,
                null);
        twice(() -> bench.get(DraftInvoice.class).save(draft, company.office));
    }

    @Test
    void a_quote() {
        Quote like = company.quote(null);
        QuoteScope scope = new QuoteScope(
                like.validUntil(),
                "",
                ExpectedTravel.NONE,
                like.lines().stream()
                        .map(line -> new QuoteScope.Line(
                                QuoteLineId.next(), line.serviceItem(), line.surface(), line.quantity()))
                        .toList());
        NewQuote quote = new NewQuote(QuoteId.next(), like.customer(), like.site(), null, scope, company.office);
        Quote first = twice(() -> bench.get(DraftQuote.class).draft(quote));
        assertEquals(company.today().minusDays(1), first.date());
    }

    @Test
    void a_scheduled_visit() {
        Visit like = company.scheduled(null);
        Scheduling scheduling = Scheduling.of(
                VisitId.next(),
                like.customer(),
                like.site(),
                like.date(),
                like.crew(),
                like.lines().stream()
                        .map(line -> new ScheduledLine(
                                VisitLineId.next(), line.serviceItem(), line.surface(), line.planned()))
                        .toList(),
                "",
                company.office);
        twice(() -> bench.get(ScheduleVisit.class).schedule(scheduling));
        Scheduling fromQuote = Scheduling.fromQuote(
                VisitId.next(), company.quote(null).id(), company.today(), like.crew(), "", company.office);
        twice(() -> bench.get(ScheduleVisit.class).schedule(fromQuote));
    }

    @Test
    void a_payment_that_names_no_date() {
        RecordPayment.Payment payment = new RecordPayment.Payment(
                PaymentId.next(),
                company.customer,
                null,
                usd("20.00"),
                PaymentMethod.CASH,
                "",
                List.of(),
                true,
                company.office);
        twice(() -> bench.get(RecordPayment.class).record(payment));
        RecordPayment.Refund refund = new RecordPayment.Refund(
                PaymentId.next(), company.customer, null, usd("5.00"), PaymentMethod.CASH, "", company.office);
        twice(() -> bench.get(RecordPayment.class).refund(refund));
    }

    @Test
    void an_action_on_a_finding() {
        FindingId finding = company.signedOff(company.scheduled(null), 2, 0);
        FindingAction.Notice notice =
                new FindingAction.Notice(FindingActionId.next(), finding, "harriet@example.com", "", company.office);
        FindingAction.Closing closing =
                new FindingAction.Closing(FindingActionId.next(), finding, "Panel replaced", company.office);
        twice(() -> {
            bench.get(ActOnFinding.class).sendNotice(notice);
            return bench.get(ReadFindings.class).finding(finding);
        });
        twice(() -> {
            bench.get(ActOnFinding.class).close(closing);
            return bench.get(ReadFindings.class).finding(finding);
        });
    }
}
