package eaveside.web.invoices;

import eaveside.invoicing.DraftContent;
import eaveside.invoicing.DraftLine;
import eaveside.invoicing.InvoiceTotals;
import eaveside.kernel.Money;
import eaveside.web.Page;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a draft comes to while it is being written; a page of its own for partial refreshes, and a part of the form.
 *
 * @param  totals   null while something is missing
 * @param  problems what is missing, in words
 */
public record TotalsPage(@Nullable InvoiceTotals totals, List<Line> lines, List<String> problems) implements Page {
    /** A line with what it comes to. */
    public record Line(String description, Money net) {}

    static TotalsPage none() {
        return new TotalsPage(null, List.of(), List.of());
    }

    static TotalsPage missing(List<String> problems) {
        return new TotalsPage(null, List.of(), problems);
    }

    static TotalsPage of(DraftContent content, InvoiceTotals totals) {
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < content.lines().size(); i++) {
            DraftLine line = content.lines().get(i);
            lines.add(new Line(line.description(), totals.lineNets().get(i)));
        }
        return new TotalsPage(totals, lines, List.of());
    }

    @Override
    public String template() {
        return "invoices/totals.jte";
    }
}
