package eaveside.reports;

import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.joda.money.CurrencyUnit;

/** Papers of an invented company. */
final class Samples {
    static final Letterhead US = new Letterhead(
            "Gutterby Exterior Care",
            List.of("1 Ladder Lane", "Gutterby, CA 00001"),
            "office@example.com",
            "555-0100",
            "00-0000000",
            Locale.US,
            PaperSize.US_LETTER);

    static final Letterhead METRIC = new Letterhead(
            "Gutterby Exterior Care",
            List.of("1 Ladder Lane", "00001 Gutterby"),
            "office@example.com",
            "555-0100",
            "NO 000 000 000",
            Locale.of("en", "NO"),
            PaperSize.A4);

    private Samples() {}

    static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, amount);
    }

    static InvoicePaper.Line line(String service, String text, String detail, Quantity quantity, String price) {
        UnitPrice unit = UnitPrice.perOne(CurrencyUnit.USD, new BigDecimal(price), quantity.unit());
        return new InvoicePaper.Line(
                service, text, detail, quantity, unit, "S", Percent.of("8.25"), unit.times(quantity));
    }

    static InvoicePaper invoice() {
        List<InvoicePaper.Line> lines = List.of(
                line(
                        "Solar arrays",
                        "Panels washed with purified water, both rows",
                        "46 of 48: two panels are cracked "
                                + "and were skipped, see our notice of findings. Story 2, pitch 25°.",
                        Quantity.of(46, Unit.PIECE),
                        "6.50"),
                line("Skylights", "Skylights washed outside", "", Quantity.of(6, Unit.PIECE), "14.00"),
                line(
                        "Skylights",
                        "Skylights washed outside, not listed before",
                        "Agreed on site with the tenant",
                        Quantity.of(4, Unit.PIECE),
                        "14.00"),
                line("Windows", "Window panes, outside", "", Quantity.of(22, Unit.PIECE), "7.25"),
                line("Roofs", "Roof soft-washed", "Growth grade 2", Quantity.of("1900", Unit.SQUARE_FOOT), "0.3125"));
        List<InvoicePaper.Adjustment> adjustments =
                List.of(new InvoicePaper.Adjustment("Several services on one visit", usd("-40.00")));
        return invoice(US, InvoicePaper.Type.INVOICE, "2026-0117", lines, adjustments, usd("300.00"));
    }

    /** The invoice as it stands on a later day, so much of it paid, and the rest credited where that is said. */
    static InvoicePaper reprinted(Money paid, boolean credited) {
        InvoicePaper first = invoice();
        Money rest = first.gross().minus(paid);
        Money none = Money.zero(CurrencyUnit.USD);
        return new InvoicePaper(
                first.from(),
                first.type(),
                first.number(),
                first.issued(),
                first.dueDate(),
                first.workedOn(),
                first.reference(),
                first.billTo(),
                first.workAt(),
                first.lines(),
                first.adjustments(),
                first.taxes(),
                first.lineTotal(),
                first.net(),
                first.tax(),
                first.gross(),
                paid,
                first.rounding(),
                credited ? none : rest,
                "As it stands.",
                first.note(),
                first.cautions(),
                credited ? rest : none,
                LocalDate.of(2027, 1, 8));
    }

    static InvoicePaper longInvoice() {
        List<InvoicePaper.Line> lines = new ArrayList<>();
        for (int i = 1; i <= 60; i++) {
            String detail = i % 7 == 0
                    ? ("The shaded side carried lichen that did not come off in one visit; more force would have harmed "
                                    + "the glass, so it was left. ")
                            .repeat(i % 3 + 1)
                    : "";
            lines.add(line(
                    i <= 40 ? "Solar arrays" : "Windows",
                    "Field block " + i + (i % 5 == 0 ? ", with the long row along the dusty lane behind the barn" : ""),
                    detail,
                    Quantity.of(10 + i, Unit.PIECE),
                    i % 2 == 0 ? "6.50" : "1234.5678"));
        }
        return invoice(US, InvoicePaper.Type.INVOICE, "2026-0118", lines, List.of(), usd("0.00"));
    }

    /** A line that fills more than a page. */
    static InvoicePaper wordyInvoice() {
        String words = "word ".repeat(1500).strip();
        return invoice(
                US,
                InvoicePaper.Type.DRAFT,
                "",
                List.of(line("Windows", words, words + " end", Quantity.of(40, Unit.PIECE), "7.25")),
                List.of(),
                usd("0.00"));
    }

    static InvoicePaper metricInvoice() {
        return invoice(METRIC, InvoicePaper.Type.INVOICE, "7", invoice().lines(), List.of(), usd("0.00"));
    }

    static InvoicePaper invoice(
            Letterhead from,
            InvoicePaper.Type type,
            String number,
            List<InvoicePaper.Line> lines,
            List<InvoicePaper.Adjustment> adjustments,
            Money paid) {
        Money lineTotal = Money.sum(
                CurrencyUnit.USD, lines.stream().map(InvoicePaper.Line::net).toList());
        Money net = lineTotal.plus(Money.sum(
                CurrencyUnit.USD,
                adjustments.stream().map(InvoicePaper.Adjustment::amount).toList()));
        Money exempt = usd("84.00");
        Money taxable = net.minus(exempt);
        Money tax = Percent.of("8.25").of(taxable);
        return new InvoicePaper(
                from,
                type,
                number,
                LocalDate.of(2026, 11, 25),
                LocalDate.of(2026, 12, 25),
                "Nov 23, 2026",
                "PO 4711",
                List.of("Holly & Bram Field", "12 Orchard Road", "Gutterby, CA 00001"),
                List.of("Field barn", "14 Orchard Road", "Gutterby, CA 00001"),
                lines,
                adjustments,
                List.of(
                        new InvoicePaper.Tax("S", Percent.of("8.25"), taxable, tax, ""),
                        new InvoicePaper.Tax("E", Percent.of("0"), exempt, usd("0.00"), "repair of a dwelling")),
                lineTotal,
                net,
                tax,
                net.plus(tax),
                paid,
                usd("0.00"),
                net.plus(tax).minus(paid),
                "Please pay within 30 days of the date above, by bank transfer, naming the invoice's number.",
                "Thank you for having us.",
                "Cracked panels can be live and may let water in: do not touch them.");
    }

    static QuotePaper quote() {
        List<QuotePaper.Line> lines = invoice().lines().stream()
                .map(l -> new QuotePaper.Line(
                        l.serviceLine(), l.description(), l.detail(), l.quantity(), l.price(), l.net()))
                .toList();
        return new QuotePaper(
                US,
                "Q-0031",
                LocalDate.of(2026, 11, 25),
                LocalDate.of(2026, 12, 25),
                List.of("Holly & Bram Field", "12 Orchard Road", "Gutterby, CA 00001"),
                List.of("Field barn", "14 Orchard Road", "Gutterby, CA 00001"),
                lines,
                invoice().lineTotal(),
                "Sales tax is added on the invoice where it applies.",
                "We move the visit when rain or wind makes the work unsafe. Units that we cannot clean are not billed.",
                "",
                "Work at height and on live arrays: keep children and animals away while we are there.");
    }

    static NoticePaper notice() {
        return new NoticePaper(
                US,
                LocalDate.of(2026, 11, 25),
                LocalDate.of(2026, 11, 23),
                List.of("Holly & Bram Field", "12 Orchard Road", "Gutterby, CA 00001"),
                List.of("Field barn", "14 Orchard Road", "Gutterby, CA 00001"),
                "On our visit we noticed the following. We tell you so that you can decide; some of it is work for other "
                        + "trades.",
                List.of(
                        new NoticePaper.Finding(
                                "Cracked glass",
                                "Urgent",
                                "Array on the south roof, row 1, panels 14 and 15 from the left",
                                "Star-shaped cracks over both panels. We left them unwashed.",
                                "electrician",
                                "Keep people away from below the glass. A cracked module may let water in and can be live.",
                                true,
                                List.of(
                                        new NoticePaper.Photo(photo(1600, 1200, 0x2B4C6F), "Panel 14 from the ladder"),
                                        new NoticePaper.Photo(
                                                photo(1200, 1600, 0x35566F),
                                                "Panel 15, with a caption so long that it has to go on in a second line under its picture"),
                                        new NoticePaper.Photo(photo(1600, 900, 0x3F606F), "Both, from the lawn"))),
                        new NoticePaper.Finding(
                                "Overhanging tree",
                                "Note",
                                "",
                                "A walnut drops leaves on the north end of row 2.",
                                "arborist",
                                "",
                                false,
                                List.of(new NoticePaper.Photo(photo(1600, 1200, 0x4F6F3F), "The walnut")))),
                "Please call us with any question.");
    }

    /** With a photo ten times as tall as wide. */
    static NoticePaper tallNotice() {
        NoticePaper paper = notice();
        return new NoticePaper(
                paper.from(),
                paper.written(),
                paper.visited(),
                paper.customer(),
                paper.site(),
                "Look:",
                List.of(new NoticePaper.Finding(
                        "Rust",
                        "Note",
                        "",
                        "",
                        "",
                        "",
                        false,
                        List.of(new NoticePaper.Photo(photo(160, 1600, 0x704030), "The pole")))),
                "That is all.");
    }

    static byte[] photo(int width, int height, int color) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = image.createGraphics();
        pen.setPaint(new GradientPaint(0, 0, new Color(color), width, height, Color.LIGHT_GRAY));
        pen.fillRect(0, 0, width, height);
        pen.setColor(Color.WHITE);
        for (int x = 0; x < width; x += 160) {
            pen.drawLine(x, 0, width / 2, height);
        }
        pen.dispose();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "jpeg", bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    static TrialBalancePaper trialBalance() {
        TrialBalancePaper.Sides before = new TrialBalancePaper.Sides(usd("38250.00"), usd("38250.00"));
        return new TrialBalancePaper(
                US,
                LocalDate.of(2026, 3, 1),
                LocalDate.of(2026, 3, 31),
                List.of(
                        balance("1000", "Bank", "Asset", "38250.00", "-1204.75", "37045.25"),
                        balance("3000", "Owner's equity", "Equity", "-38250.00", "0.00", "-38250.00"),
                        balance("6100", "Vehicle costs", "Expense", "0.00", "1204.75", "1204.75")),
                before,
                new TrialBalancePaper.Sides(usd("1204.75"), usd("1204.75")),
                before,
                "All figures are sums of ledger entries by posting date.");
    }

    private static TrialBalancePaper.Line balance(
            String code, String name, String type, String opening, String change, String closing) {
        return new TrialBalancePaper.Line(code, name, type, usd(opening), usd(change), usd(closing));
    }

    static MarginPaper margin() {
        List<MarginPaper.Line> lines = List.of(
                marginLine(
                        "Solar arrays", "48210.40", "21044.10", "3120.55", "2890.00", "6210.75", "412.00", "5200.00"),
                marginLine("Windows", "31877.25", "17210.00", "640.12", "2411.60", "5105.90", "120.00", "0.00"),
                marginLine("Roofs", "12400.00", "8911.33", "2250.80", "1190.40", "2900.05", "0.00", "1850.00"),
                marginLine("Skylights", "6120.00", "2900.00", "88.40", "380.10", "890.30", "56.00", "420.00"));
        MarginPaper.Line unassigned =
                marginLine("Not assigned", "0.00", "310.25", "-42.10", "95.00", "-120.00", "0.00", "0.00");
        MarginPaper.Line total = lines.stream()
                .reduce((a, b) -> new MarginPaper.Line(
                        "All lines",
                        a.revenue().plus(b.revenue()),
                        a.labor().plus(b.labor()),
                        a.consumables().plus(b.consumables()),
                        a.travel().plus(b.travel()),
                        a.overhead().plus(b.overhead()),
                        a.margin().plus(b.margin()),
                        a.noCharge().plus(b.noCharge()),
                        a.fromFindings().plus(b.fromFindings())))
                .orElseThrow();
        return new MarginPaper(
                US,
                LocalDate.of(2026, 8, 1),
                LocalDate.of(2026, 10, 31),
                lines,
                total,
                unassigned,
                total.margin().plus(unassigned.margin()),
                "Revenue is net of tax, credit notes and discounts. Not assigned: the period's variances of labor, travel and overhead.");
    }

    static MarginPaper.Line marginLine(
            String name,
            String revenue,
            String labor,
            String consumables,
            String travel,
            String overhead,
            String noCharge,
            String fromFindings) {
        Money margin = usd(revenue)
                .minus(usd(labor))
                .minus(usd(consumables))
                .minus(usd(travel))
                .minus(usd(overhead));
        return new MarginPaper.Line(
                name,
                usd(revenue),
                usd(labor),
                usd(consumables),
                usd(travel),
                usd(overhead),
                margin,
                usd(noCharge),
                usd(fromFindings));
    }
}
