package eaveside.margins;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.inventory.CountBasis;
import eaveside.inventory.CountStock;
import eaveside.inventory.CountedItem;
import eaveside.inventory.ReceiveGoods;
import eaveside.inventory.ReverseStockDocument;
import eaveside.inventory.StockCount;
import eaveside.invoicing.ApplyCredit;
import eaveside.invoicing.CreditInvoice;
import eaveside.invoicing.InvoiceSummary;
import eaveside.invoicing.PaymentMethod;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.RecordPayment;
import eaveside.invoicing.ReversePayment;
import eaveside.invoicing.WorkedCompany;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.PaymentId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountingPeriod;
import eaveside.ledger.ClosePeriod;
import eaveside.ledger.PostJournal;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.testing.Bench;
import eaveside.visits.CloseWithoutBilling;
import eaveside.visits.ReadVisits;
import eaveside.visits.ReverseJobSheet;
import eaveside.visits.ScopeDecision;
import eaveside.visits.Visit;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.UUID;
import java.util.logging.Logger;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * The whole chain at random: quotes, visits, sheets, differences, invoices, payments, credit, receipts, counts, costs,
 * reversals of everything and month closes, some of which the use cases refuse. The books prove true throughout.
 * {@code -Deaveside.seed=…} repeats a run.
 */
class RandomChainIT {
    private static final Logger LOG = Logger.getLogger(RandomChainIT.class.getName());
    private static final long SEED = Long.getLong("eaveside.seed", 20_261_125L);
    private static final int STEPS = 260;

    @RegisterExtension
    static final Bench bench = new Bench();

    private final Random random = new Random(SEED);
    private final Map<String, Integer> done = new TreeMap<>();
    private final Map<String, Integer> refused = new TreeMap<>();
    private final List<VisitId> visits = new ArrayList<>();
    private WorkedCompany company;

    @Test
    void the_books_stay_true_whatever_happens() {
        LOG.info("seed " + SEED);
        company = new WorkedCompany(bench);
        for (int step = 0; step < STEPS; step++) {
            String what = "step " + step + " of seed " + SEED;
            try {
                step();
            } catch (Refusal refusal) {
                refused.merge(refusal.code(), 1, Integer::sum);
            } catch (RuntimeException | AssertionError e) {
                throw new AssertionError(what, e);
            }
            if (step % 40 == 39) {
                bench.verifyBooks();
            }
            bench.clock().forward(Duration.ofHours(random.nextInt(14)));
        }
        LOG.info("seed " + SEED + " did " + done + " and was refused " + refused);
        bench.verifyBooks();
        assertEquals(13, done.size(), () -> "seed " + SEED + " never did everything: " + done);
        assertTrue(!refused.isEmpty(), "nothing was ever refused, so nothing wrong was tried");
        marginsEqualTheLedger();
    }

    private void step() {
        switch (random.nextInt(20)) {
            case 0, 1, 2 -> book();
            case 3, 4, 5, 6 -> signOff();
            case 7 -> decide();
            case 8, 9 -> bill();
            case 10, 11 -> pay();
            case 12 -> match();
            case 13 -> receive();
            case 14 -> count();
            case 15 -> cost();
            case 16, 17 -> reverse();
            case 18 -> closeWithoutBilling();
            default -> closeMonth();
        }
    }

    private void did(String what) {
        done.merge(what, 1, Integer::sum);
    }

    private void book() {
        visits.add(company.scheduled(null).id());
        did("book");
    }

    private VisitId anyVisit() {
        return visits.isEmpty() ? VisitId.next() : visits.get(random.nextInt(visits.size()));
    }

    private void signOff() {
        Visit visit = bench.get(ReadVisits.class).visit(anyVisit());
        company.signedOff(visit, random.nextInt(4), random.nextInt(3));
        did("sign off");
    }

    private void decide() {
        company.decide(anyVisit(), random.nextBoolean() ? ScopeDecision.BILL : ScopeDecision.NO_CHARGE);
        did("decide");
    }

    private void bill() {
        VisitId visit = anyVisit();
        company.decide(visit, random.nextBoolean() ? ScopeDecision.BILL : ScopeDecision.NO_CHARGE);
        company.issued(company.drafted(visit));
        did("invoice");
    }

    private void pay() {
        List<InvoiceSummary> open = bench.get(ReadInvoices.class).outstandingOf(company.customer);
        Money amount = usd(random.nextInt(60_000) + 1);
        List<RecordPayment.Allocation> allocations = new ArrayList<>();
        Money left = amount;
        for (InvoiceSummary invoice : open) {
            Money part = invoice.open().compareTo(left) < 0 ? invoice.open() : left;
            if (part.isPositive() && random.nextInt(3) > 0) {
                allocations.add(new RecordPayment.Allocation(invoice.id(), part));
                left = left.minus(part);
            }
        }
        bench.get(RecordPayment.class)
                .record(new RecordPayment.Payment(
                        PaymentId.next(),
                        company.customer,
                        company.today(),
                        amount,
                        PaymentMethod.values()[random.nextInt(PaymentMethod.values().length)],
                        "",
                        allocations,
                        true,
                        company.office));
        did(allocations.isEmpty() ? "payment on account" : "payment");
    }

    private void match() {
        List<InvoiceSummary> open = bench.get(ReadInvoices.class).outstandingOf(company.customer);
        if (!open.isEmpty()) {
            bench.get(ApplyCredit.class)
                    .apply(new ApplyCredit.Apply(
                            DocumentId.next(),
                            open.get(random.nextInt(open.size())).id(),
                            usd(random.nextInt(20_000) + 1),
                            company.today(),
                            company.office));
            did("match credit");
        }
    }

    private void receive() {
        Map<String, Object> lot =
                bench.rows("select item_id, location_id from lot_stock limit 1").getFirst();
        bench.get(ReceiveGoods.class)
                .receive(new ReceiveGoods.Receipt(
                        DocumentId.next(),
                        company.today(),
                        new LocationId((UUID) lot.get("location_id")),
                        "Suds & Co",
                        "",
                        List.of(new ReceiveGoods.Received(
                                LotId.next(),
                                new StockItemId((UUID) lot.get("item_id")),
                                null,
                                Quantity.of(random.nextInt(20) + 1L, Unit.PIECE),
                                usd(random.nextInt(50_000) + 1),
                                "")),
                        company.office));
        did("receipt");
    }

    private void count() {
        Map<String, Object> held = bench.rows(
                        "select item_id, location_id, sum(quantity) as held from lot_stock" + " group by 1, 2 limit 1")
                .getFirst();
        Quantity counted = Quantity.rounded(
                ((BigDecimal) held.get("held")).add(BigDecimal.valueOf(random.nextInt(7) - 3L)), Unit.PIECE);
        bench.get(CountStock.class)
                .count(new StockCount(
                        DocumentId.next(),
                        company.today(),
                        new LocationId((UUID) held.get("location_id")),
                        "Counted",
                        List.of(new CountedItem(
                                new StockItemId((UUID) held.get("item_id")), null, CountBasis.FOUND, counted, null)),
                        company.office));
        did("count");
    }

    private void cost() {
        Money amount = usd(random.nextInt(30_000) + 1);
        String account = List.of("6000", "6100", "6200").get(random.nextInt(3));
        bench.get(PostJournal.class)
                .post(new PostJournal.Journal(
                        DocumentId.next(),
                        PostJournal.Type.EXPENSE,
                        company.today().minusDays(random.nextInt(20)),
                        "Bill",
                        List.of(
                                PostJournal.Line.debit(new AccountCode(account), amount),
                                PostJournal.Line.credit(new AccountCode("2000"), amount)),
                        company.office));
        did("cost");
    }

    /** Any posted document, by the use case that owns its type; many are refused, by name. */
    private void reverse() {
        List<Map<String, Object>> documents = bench.rows("select id, type from document where type not in ('REVERSAL',"
                + " 'CREDIT_MEMO', 'PERIOD_CLOSE') order by number, type");
        Map<String, Object> document = documents.get(random.nextInt(documents.size()));
        Reversal reversal = new Reversal(
                DocumentId.next(),
                new DocumentId((UUID) document.get("id")),
                company.today(),
                "Entered wrongly",
                company.office);
        String type = String.valueOf(document.get("type"));
        switch (type) {
            case "JOURNAL", "EXPENSE" -> bench.get(PostJournal.class).reverse(reversal);
            case "RECEIPT", "TRANSFER", "COUNT", "WRITE_OFF" ->
                bench.get(ReverseStockDocument.class).reverse(reversal);
            case "JOB_SHEET" -> bench.get(ReverseJobSheet.class).reverse(reversal);
            case "INVOICE" -> bench.get(CreditInvoice.class).credit(reversal);
            case "PAYMENT" -> bench.get(ReversePayment.class).reverse(reversal);
            case "CREDIT_APPLICATION" -> bench.get(ApplyCredit.class).undo(reversal);
            default -> {
                return;
            }
        }
        did("reverse");
    }

    private void closeWithoutBilling() {
        VisitId visit = anyVisit();
        company.decide(visit, ScopeDecision.NO_CHARGE);
        bench.get(CloseWithoutBilling.class)
                .close(new CloseWithoutBilling.Closing(
                        DocumentId.next(), visit, company.today(), "Nothing to bill", company.office));
        did("close without billing");
    }

    private void closeMonth() {
        YearMonth oldest = bench.get(ReadLedger.class).periods().stream()
                .filter(p -> p.closedAt() == null)
                .map(AccountingPeriod::month)
                .min(YearMonth::compareTo)
                .orElseThrow();
        bench.get(ClosePeriod.class).close(new ClosePeriod.Close(DocumentId.next(), oldest, company.office));
        did("close month");
    }

    private static void marginsEqualTheLedger() {
        LocalDate first = LocalDate.of(2026, 1, 1);
        LocalDate last = LocalDate.of(2027, 12, 31);
        MarginReport report = bench.get(ReadMargins.class).margin(new Period(first, last));
        ReadLedger ledger = bench.get(ReadLedger.class);
        for (MarginReport.LineMargin line : report.lines()) {
            for (Figure figure : List.of(
                    line.row().revenue(),
                    line.row().labor(),
                    line.row().consumables(),
                    line.row().travel(),
                    line.row().overhead(),
                    line.row().margin(),
                    line.row().noCharge())) {
                assertEquals(figure.ledgerSum(), ledger.total(figure.opens()));
            }
        }
        assertEquals(report.result().ledgerSum(), ledger.total(report.result().opens()));
    }

    private static Money usd(long cents) {
        return Money.of(CurrencyUnit.USD, BigDecimal.valueOf(cents, 2));
    }
}
