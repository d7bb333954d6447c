package eaveside.reports;

import static eaveside.reports.Samples.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.reports.internal.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Pattern;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;

class PapersTest {
    private final Papers papers = new Papers();

    private static void says(String text, String expected) {
        assertTrue(text.contains(expected), () -> "'" + expected + "' is missing from: " + text);
    }

    private static String plain(Money money) {
        return String.format(Locale.US, "%,.2f", money.amount());
    }

    private static void isProper(ReadBack paper, String language) {
        assertTrue(paper.isTagged());
        assertEquals(language, paper.language());
        assertEquals(List.of(), paper.fontsLeftOut());
        assertEquals(List.of(), paper.outside(30));
        List<String> pages = paper.pages();
        for (int i = 0; i < pages.size(); i++) {
            says(pages.get(i), "Page " + (i + 1) + " of " + pages.size());
        }
    }

    @Test
    void an_invoice_prints_every_figure_of_its_record() {
        InvoicePaper paper = Samples.invoice();
        ReadBack printed = new ReadBack(papers.invoice(paper));
        isProper(printed, "en-US");
        assertEquals("Invoice 2026-0117", printed.title());
        assertEquals("Eaveside, Eaveside", printed.makers(), "and neither a library nor its version");
        String text = printed.text();
        for (InvoicePaper.Line line : paper.lines()) {
            says(text, line.description());
            says(text, line.detail());
        }
        says(text, "46 each 6.50 8.25% 299.00");
        says(text, "6 each 14.00 8.25% 84.00");
        says(text, "4 each 14.00 8.25% 56.00");
        says(text, "22 each 7.25 8.25% 159.50");
        says(text, "1,900 sq ft 0.3125 8.25% 593.75");
        says(text, "Subtotal Skylights 140.00");
        says(text, "Line total " + plain(paper.lineTotal()));
        says(text, "Several services on one visit -40.00");
        says(text, "Subtotal " + plain(paper.net()));
        says(text, "Tax " + plain(paper.tax()));
        says(text, "Total " + plain(paper.gross()));
        says(text, "Paid -" + plain(paper.paid()));
        says(text, "Amount due $" + plain(paper.due()));
        for (InvoicePaper.Tax tax : paper.taxes()) {
            says(text, tax.rate().value().toPlainString() + "% " + plain(tax.taxable()) + " " + plain(tax.amount()));
        }
        says(text, "Exempt (E): repair of a dwelling");
        for (String words : List.of(
                "Nov 25, 2026",
                "Dec 25, 2026",
                "PO 4711",
                paper.terms(),
                paper.note(),
                paper.cautions(),
                "Follow local codes",
                "licensed professional",
                "Tax number 00-0000000",
                "Holly & Bram Field")) {
            says(text, words);
        }
    }

    @Test
    void a_line_says_its_tax_in_words_and_its_price_in_one_row() {
        UnitPrice panel = UnitPrice.perOne(CurrencyUnit.USD, new BigDecimal("6.50"), Unit.PIECE);
        UnitPrice area = new UnitPrice(CurrencyUnit.USD, new BigDecimal("38.285"), Quantity.of(100, Unit.SQUARE_FOOT));
        Quantity panels = Quantity.of(46, Unit.PIECE);
        Quantity roof = Quantity.of(1900, Unit.SQUARE_FOOT);
        List<InvoicePaper.Line> lines = List.of(
                new InvoicePaper.Line(
                        "Solar arrays", "Panels", "", panels, panel, "O", Percent.of("0"), panel.times(panels)),
                new InvoicePaper.Line("Roofs", "Roof", "", roof, area, "S", Percent.of("8.25"), area.times(roof)));
        String text = new ReadBack(papers.invoice(Samples.invoice(
                        Samples.US, InvoicePaper.Type.INVOICE, "2026-0119", lines, List.of(), usd("0.00"))))
                .text();
        says(text, "Panels 46 each 6.50 Non-taxable 299.00");
        says(text, "Roof 1,900 sq ft 38.285 per 100 sq ft 8.25% 727.42");
    }

    @Test
    void a_reprinted_invoice_states_the_balance_of_the_day() {
        Money gross = Samples.invoice().gross();
        String part = new ReadBack(papers.invoice(Samples.reprinted(usd("300.00"), false))).text();
        says(part, "Total " + plain(gross));
        says(part, "Paid by Jan 8, 2027 -300.00");
        says(part, "Balance due $" + plain(gross.minus(usd("300.00"))));
        says(part, "Dec 25, 2026");

        String paid = new ReadBack(papers.invoice(Samples.reprinted(gross, false))).text();
        says(paid, "Status Paid");
        says(paid, "Balance due $0.00");
        assertFalse(paid.contains("Dec 25, 2026"), "a due date asks for money");

        String credited = new ReadBack(papers.invoice(Samples.reprinted(usd("0.00"), true))).text();
        says(credited, "Status Credited");
        says(credited, "Credited in full -" + plain(gross));
        says(credited, "Balance due $0.00");
        assertFalse(credited.contains("Paid by"), credited);
    }

    @Test
    void a_long_invoice_breaks_between_lines_and_repeats_its_head() {
        InvoicePaper paper = Samples.longInvoice();
        ReadBack printed = new ReadBack(papers.invoice(paper));
        isProper(printed, "en-US");
        List<String> pages = printed.pages();
        assertTrue(pages.size() >= 3, pages.size() + " pages");
        for (String page : pages) {
            says(page, "Description Quantity Unit price Tax Amount (USD)");
        }
        says(pages.get(1), "Gutterby Exterior Care · Invoice 2026-0118");
        String text = printed.text();
        for (InvoicePaper.Line line : paper.lines()) {
            String first = line.description().split(",", 2)[0];
            String figures = " " + line.quantity().value() + " each ";
            assertTrue(
                    pages.stream()
                            .anyMatch(page ->
                                    page.contains(first) && page.contains(figures) && page.contains(plain(line.net()))),
                    line + " is torn apart");
        }
        says(text, "Amount due $" + plain(paper.due()));
        long said = paper.lines().stream()
                .mapToLong(line -> line.detail().split("more force would have harmed", -1).length - 1)
                .sum();
        assertEquals(said, text.split("more force would have harmed", -1).length - 1);
    }

    @Test
    void a_description_longer_than_a_page_is_printed_whole() {
        InvoicePaper paper = Samples.wordyInvoice();
        ReadBack printed = new ReadBack(papers.invoice(paper));
        isProper(printed, "en-US");
        assertEquals(3000, printed.text().split("\\bword\\b", -1).length - 1);
        assertEquals("Draft invoice", printed.title());
    }

    @Test
    void what_customers_write_is_never_taken_for_markup_or_an_expression() {
        String odd = "<b>&</b> $F{text} ${x} % {0} 'q' ≤ 35 bar";
        InvoicePaper paper = Samples.invoice(
                Samples.US,
                InvoicePaper.Type.CREDIT_MEMO,
                "{1}",
                List.of(Samples.line(odd, odd, odd, Quantity.of(40, Unit.PIECE), "7.25")),
                List.of(new InvoicePaper.Adjustment(odd, usd("1.00"))),
                usd("0.00"));
        String text = new ReadBack(papers.invoice(paper)).text();
        assertEquals(4, text.split(Pattern.quote(odd), -1).length - 1, text);
        says(text, "Credit memo {1}");
        says(text, "Amount credited");
    }

    @Test
    void paper_and_language_are_the_companys() {
        InvoicePaper metric = Samples.metricInvoice();
        ReadBack printed = new ReadBack(papers.invoice(metric));
        isProper(printed, "en-NO");
        assertEquals(List.of(595, 842), printed.size());
        assertEquals(List.of(612, 792), new ReadBack(papers.invoice(Samples.invoice())).size());
        assertEquals(List.of(792, 612), new ReadBack(papers.marginPdf(Samples.margin())).size());
    }

    @Test
    void amounts_follow_the_currency() {
        Words us = new Words(Locale.US);
        assertEquals("$1,234.50", us.withCurrency(usd("1234.50")));
        assertEquals("-$5.00", us.withCurrency(usd("-5.00")));
        assertEquals("¥1,235", us.withCurrency(Money.of(CurrencyUnit.of("JPY"), "1235")));
        assertEquals("1,234.500", us.amount(Money.of(CurrencyUnit.of("KWD"), "1234.5")));
        assertEquals("1.234,50", new Words(Locale.of("en", "DE")).amount(usd("1234.50")));
        UnitPrice dozen = new UnitPrice(CurrencyUnit.USD, new BigDecimal("15.24"), Quantity.of(12, Unit.PIECE));
        assertEquals("15.24 per 12 each", us.price(dozen));
        for (Unit unit : Unit.values()) {
            assertFalse(us.quantity(Quantity.of("0.5", unit)).isBlank());
        }
    }

    @Test
    void figures_that_contradict_one_another_are_never_printed() {
        InvoicePaper good = Samples.invoice();
        for (int off = 0; off < 6; off++) {
            Money[] sums = {good.lineTotal(), good.net(), good.tax(), good.gross(), good.paid(), good.due()};
            sums[off] = sums[off].plus(usd("0.01"));
            assertThrows(
                    IllegalArgumentException.class,
                    () -> new InvoicePaper(
                            good.from(),
                            good.type(),
                            good.number(),
                            good.issued(),
                            good.dueDate(),
                            good.workedOn(),
                            good.reference(),
                            good.billTo(),
                            good.workAt(),
                            good.lines(),
                            good.adjustments(),
                            good.taxes(),
                            sums[0],
                            sums[1],
                            sums[2],
                            sums[3],
                            sums[4],
                            good.rounding(),
                            sums[5],
                            good.terms(),
                            good.note(),
                            good.cautions()));
        }
        MarginPaper.Line line = Samples.margin().lines().getFirst();
        assertThrows(
                IllegalArgumentException.class,
                () -> new MarginPaper.Line(
                        line.name(),
                        line.revenue(),
                        line.labor(),
                        line.consumables(),
                        line.travel(),
                        line.overhead(),
                        line.margin().plus(usd("0.01")),
                        line.noCharge(),
                        line.fromFindings()));
        MarginPaper margin = Samples.margin();
        assertThrows(
                IllegalArgumentException.class,
                () -> new MarginPaper(
                        margin.from(),
                        margin.first(),
                        margin.last(),
                        margin.lines(),
                        margin.total(),
                        null,
                        margin.result(),
                        ""));
    }

    @Test
    void a_quote_prints_its_lines_total_and_a_location_to_sign() {
        QuotePaper paper = Samples.quote();
        ReadBack printed = new ReadBack(papers.quote(paper));
        isProper(printed, "en-US");
        String text = printed.text();
        for (QuotePaper.Line line : paper.lines()) {
            says(text, line.description());
            says(text, line.detail());
            says(text, " " + plain(line.net()));
        }
        says(text, "Subtotal $" + plain(paper.total()));
        for (String words : List.of(
                "Valid until Dec 25, 2026",
                paper.taxNote(),
                paper.terms(),
                paper.cautions(),
                "Follow local codes",
                "Name and signature")) {
            says(text, words);
        }
        assertEquals("Quote Q-0031", printed.title());
    }

    @Test
    void a_notice_shows_each_finding_with_its_photos_and_cautions() {
        NoticePaper paper = Samples.notice();
        ReadBack printed = new ReadBack(papers.notice(paper));
        isProper(printed, "en-US");
        String text = printed.text();
        List<String> captions = new ArrayList<>();
        for (NoticePaper.Finding finding : paper.findings()) {
            says(text, finding.title());
            says(text, finding.urgency());
            says(text, finding.location());
            says(text, finding.note());
            says(text, "A licensed " + finding.trade());
            finding.photos().forEach(photo -> captions.add(photo.caption()));
        }
        says(text, "1. Cracked glass");
        says(text, "2. Overhanging tree");
        says(text, "Follow local codes");
        says(text, paper.greeting());
        says(text, paper.closing());
        captions.stream().map(c -> c.split(",", 2)[0]).forEach(caption -> says(text, caption));
        assertEquals(captions, printed.alternativeTexts());
    }

    @Test
    void a_caution_that_names_local_codes_is_not_told_twice() {
        NoticePaper paper = Samples.notice();
        NoticePaper.Finding finding = paper.findings().getFirst();
        NoticePaper said = new NoticePaper(
                paper.from(),
                paper.written(),
                paper.visited(),
                paper.customer(),
                paper.site(),
                "",
                List.of(new NoticePaper.Finding(
                        finding.title(),
                        finding.urgency(),
                        "",
                        finding.note(),
                        "",
                        "Keep off; follow local codes.",
                        false,
                        List.of())),
                "");
        assertFalse(new ReadBack(papers.notice(said)).text().contains("leave work that they reserve"));
    }

    @Test
    void a_tall_photo_still_fits_on_a_page() {
        NoticePaper tall = Samples.tallNotice();
        ReadBack printed = new ReadBack(papers.notice(tall));
        isProper(printed, "en-US");
        assertEquals(1, printed.pages().size());
        says(printed.text(), "The pole");
    }

    @Test
    void the_trial_balance_prints_every_figure_on_its_side() {
        TrialBalancePaper paper = Samples.trialBalance();
        ReadBack printed = new ReadBack(papers.trialBalance(paper));
        isProper(printed, "en-US");
        assertEquals("Trial balance", printed.title());
        String text = printed.text();
        says(text, "Opening balance Change Closing balance");
        says(text, "1000 Bank Asset 38,250.00 1,204.75 37,045.25");
        says(text, "3000 Owner's equity Equity 38,250.00 38,250.00");
        says(text, "6100 Vehicle costs Expense 1,204.75 1,204.75");
        says(text, "Total 38,250.00 38,250.00 1,204.75 1,204.75 38,250.00 38,250.00");
        says(text, "Mar 1, 2026 to Mar 31, 2026, amounts in USD");
        says(text, paper.note());
    }

    @Test
    void a_trial_balance_that_does_not_balance_is_never_printed() {
        TrialBalancePaper good = Samples.trialBalance();
        assertThrows(
                IllegalArgumentException.class, () -> new TrialBalancePaper.Sides(usd("38250.00"), usd("38249.99")));
        assertThrows(
                IllegalArgumentException.class,
                () -> new TrialBalancePaper.Line("1000", "Bank", "Asset", usd("1.00"), usd("1.00"), usd("2.01")));
        assertThrows(
                IllegalArgumentException.class,
                () -> new TrialBalancePaper(
                        good.from(),
                        good.first(),
                        good.last(),
                        good.lines().subList(0, 2),
                        good.opening(),
                        good.change(),
                        good.closing(),
                        ""));
    }

    @Test
    void the_margin_report_prints_every_figure_of_its_record() {
        MarginPaper paper = Samples.margin();
        ReadBack printed = new ReadBack(papers.marginPdf(paper));
        isProper(printed, "en-US");
        String text = printed.text();
        List<MarginPaper.Line> all = new ArrayList<>(paper.lines());
        all.add(paper.unassigned());
        all.add(paper.total());
        for (MarginPaper.Line line : all) {
            BigDecimal percent = line.marginPercent();
            List<String> row = new ArrayList<>(List.of(
                    line.name(),
                    plain(line.revenue()),
                    plain(line.labor()),
                    plain(line.consumables()),
                    plain(line.travel()),
                    plain(line.overhead()),
                    plain(line.margin())));
            if (percent != null) {
                row.add(percent.toPlainString());
            }
            row.addAll(List.of(plain(line.noCharge()), plain(line.fromFindings())));
            says(text, String.join(" ", row));
        }
        says(text, "Result by the ledger " + plain(paper.result()));
        says(text, "Aug 1, 2026 to Oct 31, 2026, amounts in USD");
        says(text, paper.note());
        assertNull(paper.unassigned().marginPercent());
        assertEquals(1, printed.alternativeTexts().size());
        says(printed.alternativeTexts().getFirst(), "Stacked bars");
    }

    @Test
    void many_can_print_at_once() throws Exception {
        String alone = new ReadBack(papers.invoice(Samples.longInvoice())).text();
        try (ExecutorService pool = Executors.newFixedThreadPool(8)) {
            List<Callable<byte[]>> prints = Collections.nCopies(16, () -> papers.invoice(Samples.longInvoice()));
            for (Future<byte[]> print : pool.invokeAll(prints)) {
                assertEquals(alone, new ReadBack(print.get()).text());
            }
        }
    }
}
