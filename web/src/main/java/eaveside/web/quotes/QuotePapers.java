package eaveside.web.quotes;

import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.kernel.Shared;
import eaveside.pricing.ExplanationText;
import eaveside.pricing.Quote;
import eaveside.reports.QuotePaper;
import eaveside.web.Names;
import eaveside.web.View;
import eaveside.web.papers.Letterheads;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;

/** A quote as the paper that the customer gets. */
@Shared
class QuotePapers {
    @Inject
    Letterheads letterheads;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    Names names;

    QuotePaper paper(Quote quote, View view) {
        Customer customer = readCustomer.customer(quote.customer());
        Site site = readCustomer.site(quote.site());
        List<QuotePaper.Line> lines = new ArrayList<>();
        for (Quote.Line line : quote.lines()) {
            String serviceItem = names.serviceItem(line.serviceItem());
            String surface = names.surface(line.surface());
            lines.add(new QuotePaper.Line(
                    names.line(line.serviceLine()),
                    surface.isEmpty() ? serviceItem : view.t("quotes.paper.line", serviceItem, surface),
                    ExplanationText.of(line.explanation(), view.locale()),
                    line.quantity(),
                    line.unitPrice(),
                    line.net()));
        }
        return new QuotePaper(
                letterheads.current(),
                String.valueOf(quote.number()),
                quote.date(),
                quote.validUntil(),
                customer.address().onPaper(customer.name()),
                site.address().onPaper(site.name()),
                lines,
                quote.total(),
                view.t("quotes.paper.tax"),
                view.t("quotes.paper.terms", view.date(quote.validUntil())),
                quote.note(),
                view.t("quotes.paper.cautions"));
    }
}
