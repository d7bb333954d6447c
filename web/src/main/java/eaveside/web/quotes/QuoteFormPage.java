package eaveside.web.quotes;

import eaveside.customers.Customer;
import eaveside.customers.Site;
import eaveside.findings.FindingView;
import eaveside.kernel.QuoteId;
import eaveside.pricing.PriceBook;
import eaveside.pricing.Quote;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The form of a quote, with its prices as they would be.
 *
 * @param  before  the quote that is changed; null for a new one
 * @param  finding that it came from
 * @param  stored  the quote as somebody else has left it in the meantime; null where nobody has
 */
public record QuoteFormPage(
        QuoteId id,
        @Nullable Quote before,
        Customer customer,
        Site site,
        @Nullable FindingView finding,
        PriceBook book,
        QuoteForm form,
        Fields fields,
        Calculated worked,
        @Nullable Quote stored)
        implements Page {
    @Override
    public String template() {
        return "quotes/form.jte";
    }

    /** Where it is sent to. */
    public String action() {
        return before == null ? "/quotes" : "/quotes/" + id;
    }

    public int version() {
        return before == null ? 0 : before.version();
    }

    public List<QuoteForm.Group> groups() {
        return form.groups(fields);
    }

    public List<Integer> freeRows() {
        return form.freeRows(fields);
    }

    /** What a free row can name. */
    public Map<String, String> sold() {
        Map<String, String> sold = new LinkedHashMap<>();
        form.sold().forEach(o -> sold.put(o.id().toString(), o.name()));
        return sold;
    }
}
