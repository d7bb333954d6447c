package eaveside.web.invoices;

import eaveside.invoicing.Draft;
import eaveside.invoicing.InvoiceTotals;
import eaveside.web.Page;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a draft comes to while it is being written; a page of its own for partial refreshes, and a part of the form.
 *
 * @param  totals   with their draft; both null while something is missing
 * @param  problems what is missing, in words
 */
public record TotalsPage(@Nullable Draft draft, @Nullable InvoiceTotals totals, List<String> problems) implements Page {
    static TotalsPage missing(List<String> problems) {
        return new TotalsPage(null, null, problems);
    }

    @Override
    public String template() {
        return "invoices/totals.jte";
    }
}
