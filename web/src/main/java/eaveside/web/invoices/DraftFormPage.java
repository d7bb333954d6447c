package eaveside.web.invoices;

import eaveside.customers.Customer;
import eaveside.invoicing.Draft;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceTotals;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Money;
import eaveside.kernel.Unit;
import eaveside.web.Page;
import eaveside.web.PagePart;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.Options;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The form of a draft, new or stored.
 *
 * @param  editing      what is being edited, as it is stored now; null for a new one
 * @param  services     what is sold, by id, with their names
 * @param  serviceLines by id, with their names
 * @param  taxCodes     with what they mean on the service date
 * @param  credit       the customer's unapplied credit
 */
public record DraftFormPage(
        Form<Draft> form,
        Customer customer,
        @Nullable InvoiceDraft editing,
        Map<String, String> services,
        Map<String, String> serviceLines,
        Map<String, String> taxCodes,
        Money credit,
        Totals totals)
        implements Page {
    private static final Set<Unit> SENT = Set.of(
            Unit.PIECE,
            Unit.SQUARE_FOOT,
            Unit.SQUARE_METER,
            Unit.FOOT,
            Unit.METER,
            Unit.HOUR,
            Unit.US_GALLON,
            Unit.LITER,
            Unit.MILE,
            Unit.KILOMETER);

    /**
     * What a draft comes to while it is being written; a page of its own for partial refreshes, and a part of the form.
     *
     * @param  totals   with their draft; both null while something is missing
     * @param  problems what is missing, in words
     */
    public record Totals(@Nullable Draft draft, @Nullable InvoiceTotals totals, List<String> problems)
            implements PagePart {
        static Totals missing(List<String> problems) {
            return new Totals(null, null, problems);
        }
    }

    Fields fields() {
        return form.fields();
    }

    /** The line's id; a new row gets one when it is first shown, so that sending it twice means the same line. */
    public String lineId(int row) {
        String typed = fields().typed("line-" + row + "-id");
        return typed.isEmpty() ? InvoiceLineId.next().toString() : typed;
    }

    /** The numbers of the allowances and charges under a prefix, with a spare one. */
    public List<Integer> adjustmentRows(String prefix) {
        return Fields.andNext(fields().rows(prefix).stream()
                .filter(row -> Stream.of("amount", "reason")
                        .anyMatch(name ->
                                !fields().typed(prefix + "-" + row + "-" + name).isBlank()))
                .toList());
    }

    /** Whether something has been written under the prefix, or is wrong there. */
    public boolean isUsed(String prefix) {
        return adjustmentRows(prefix).size() > 1 || fields().wrong().stream().anyMatch(name -> name.startsWith(prefix));
    }

    /** The line bills no-charge work: its value is shown and not asked for. */
    public boolean isNoCharge(int row) {
        String id = fields().typed("line-" + row + "-id");
        return editing != null && !id.isEmpty() && editing.isNoCharge(InvoiceLineId.of(id));
    }

    /** Whether a discount has been entered. */
    public boolean isDiscounted(int row) {
        String discount = fields().typed("line-" + row + "-discount");
        return !discount.isBlank() && !discount.equals("0");
    }

    /** The units to choose from; one that is already used stays choosable. */
    public Map<String, String> units(int row, View view) {
        String used = fields().typed("line-" + row + "-quantityUnit");
        return Options.of(
                Stream.of(Unit.values())
                        .filter(unit -> SENT.contains(unit) || unit.code().equals(used))
                        .toList(),
                Unit::code,
                unit -> view.unit(unit).isEmpty() ? view.t("invoices.piece") : view.unit(unit));
    }

    /** With what was typed in front where it is not among the choices any more. */
    public Map<String, String> choices(Map<String, String> choices, String typed) {
        if (typed.isEmpty() || choices.containsKey(typed)) {
            return choices;
        }
        Map<String, String> with = new LinkedHashMap<>();
        with.put(typed, typed);
        with.putAll(choices);
        return with;
    }
}
