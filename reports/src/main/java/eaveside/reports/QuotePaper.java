package eaveside.reports;

import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.UnitPrice;
import java.time.LocalDate;
import java.util.List;

/**
 * A quote for a customer: what would be done, where, and for how much. Its total is net of tax.
 *
 * @param  taxNote  what is said about tax, such as that it is added where it applies
 * @param  terms    what is agreed by accepting; may be empty
 * @param  cautions what the work may bring with it, and the licensed trades it leaves to others; may be empty
 */
public record QuotePaper(
        Letterhead from,
        String number,
        LocalDate made,
        LocalDate validUntil,
        List<String> customer,
        List<String> workAt,
        List<Line> lines,
        Money total,
        String taxNote,
        String terms,
        String note,
        String cautions) {
    /**
     * A line.
     *
     * @param  detail how the price came about, in words; may be empty
     */
    public record Line(
            String serviceLine, String description, String detail, Quantity quantity, UnitPrice price, Money net) {}

    public QuotePaper {
        customer = customer.stream().filter(line -> !line.isBlank()).toList();
        workAt = workAt.stream().filter(line -> !line.isBlank()).toList();
        lines = List.copyOf(lines);
        Agreement.require("lines", total, lines.stream().map(Line::net).toList());
    }
}
