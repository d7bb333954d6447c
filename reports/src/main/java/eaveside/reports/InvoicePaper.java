package eaveside.reports;

import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.UnitPrice;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An invoice or credit memo on paper, with the sums of EN 16931: lines − allowances + charges = net; net + tax = gross;
 * gross − paid − credited + rounding = due. All amounts in one currency.
 *
 * @param  number     as printed; empty on a draft
 * @param  dueDate    absent where nothing is to be paid by a date
 * @param  workedOn   the day or days of the work; may be empty
 * @param  reference  the customer's reference, or what a credit memo credits; may be empty
 * @param  workAt     the site, line by line; may be empty
 * @param  terms      how and until when to pay
 * @param  cautions   what the customer should keep in mind; may be empty
 * @param  credited   taken back by a credit memo
 * @param  asOf       the day that paid, credited and due are of; absent where they are what was written first
 */
public record InvoicePaper(
        Letterhead from,
        Type type,
        String number,
        LocalDate issued,
        @Nullable LocalDate dueDate,
        String workedOn,
        String reference,
        List<String> billTo,
        List<String> workAt,
        List<Line> lines,
        List<Adjustment> adjustments,
        List<Tax> taxes,
        Money lineTotal,
        Money net,
        Money tax,
        Money gross,
        Money paid,
        Money rounding,
        Money due,
        String terms,
        String note,
        String cautions,
        Money credited,
        @Nullable LocalDate asOf) {
    /** As it is written first, before anything is paid on it or credited. */
    public InvoicePaper(
            Letterhead from,
            Type type,
            String number,
            LocalDate issued,
            @Nullable LocalDate dueDate,
            String workedOn,
            String reference,
            List<String> billTo,
            List<String> workAt,
            List<Line> lines,
            List<Adjustment> adjustments,
            List<Tax> taxes,
            Money lineTotal,
            Money net,
            Money tax,
            Money gross,
            Money paid,
            Money rounding,
            Money due,
            String terms,
            String note,
            String cautions) {
        this(
                from,
                type,
                number,
                issued,
                dueDate,
                workedOn,
                reference,
                billTo,
                workAt,
                lines,
                adjustments,
                taxes,
                lineTotal,
                net,
                tax,
                gross,
                paid,
                rounding,
                due,
                terms,
                note,
                cautions,
                Money.zero(due.currency()),
                null);
    }

    /** What the paper is. */
    public enum Type {
        INVOICE,
        CREDIT_MEMO,
        DRAFT
    }

    /**
     * A line.
     *
     * @param  serviceLine the heading it stands under; lines of one heading are gathered, with a subtotal where it
     *                    has several lines and is not the only one
     * @param  detail      further words, such as how the price came about; may be empty
     */
    public record Line(
            String serviceLine,
            String description,
            String detail,
            Quantity quantity,
            UnitPrice price,
            String taxCategory,
            Percent taxRate,
            Money net) {}

    /** An allowance (below zero) or charge (above) on the whole document. */
    public record Adjustment(String reason, Money amount) {}

    /**
     * The tax of one category and rate.
     *
     * @param  category  a code of UNCL 5305
     * @param  exemption why nothing is taxed; may be empty
     */
    public record Tax(String category, Percent rate, Money taxable, Money amount, String exemption) {}

    public InvoicePaper {
        billTo = billTo.stream().filter(line -> !line.isBlank()).toList();
        workAt = workAt.stream().filter(line -> !line.isBlank()).toList();
        lines = List.copyOf(lines);
        adjustments = List.copyOf(adjustments);
        taxes = List.copyOf(taxes);
        Agreement.require("lines", lineTotal, lines.stream().map(Line::net).toList());
        Agreement.require(
                "net",
                net.minus(lineTotal),
                adjustments.stream().map(Adjustment::amount).toList());
        Agreement.require("taxable", net, taxes.stream().map(Tax::taxable).toList());
        Agreement.require("tax", tax, taxes.stream().map(Tax::amount).toList());
        Agreement.require("gross", gross, List.of(net, tax));
        Agreement.require("due", due, List.of(gross, paid.negated(), credited.negated(), rounding));
    }

    /** Whether it states a balance of which nothing is due any more. */
    public boolean isSettled() {
        return asOf != null && due.isZero();
    }
}
