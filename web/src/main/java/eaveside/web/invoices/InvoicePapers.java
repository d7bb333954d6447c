package eaveside.web.invoices;

import eaveside.catalog.Catalog;
import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxSetting;
import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.invoicing.Adjustment;
import eaveside.invoicing.Draft;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceInput.DocumentAdjustment;
import eaveside.invoicing.InvoiceRefusal;
import eaveside.invoicing.InvoiceTotals;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.IssuedInvoice.CreditMemo;
import eaveside.invoicing.ItemPrice;
import eaveside.invoicing.LineOrigin;
import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.VisitId;
import eaveside.reports.InvoicePaper;
import eaveside.reports.Papers;
import eaveside.visits.ReadVisits;
import eaveside.web.Names;
import eaveside.web.View;
import eaveside.web.forms.Respond;
import eaveside.web.papers.Letterheads;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Invoices, credit memos and drafts on paper: the stored figures, none worked out anew. An invoice states the balance of the
 * day that it is printed on.
 */
@Path("/invoices")
@Dependent
@Produces(Papers.PDF)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class InvoicePapers {
    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    ReadVisits readVisits;

    @Inject
    Catalog catalog;

    @Inject
    Letterheads letterheads;

    @Inject
    Papers papers;

    @Inject
    Names names;

    @Inject
    Viewer viewer;

    @GET
    @Path("{id}.pdf")
    @Transactional
    public Response invoice(@PathParam("id") InvoiceId id) {
        InvoicePaper paper =
                readInvoices.draftIfThere(id).map(this::draft).orElseGet(() -> issued(readInvoices.invoice(id), null));
        return pdf(paper, "invoice-" + (paper.number().isEmpty() ? id : paper.number()));
    }

    @GET
    @Path("{id}/credit-memo.pdf")
    @Transactional
    public Response creditMemo(@PathParam("id") InvoiceId id) {
        IssuedInvoice invoice = readInvoices.invoice(id);
        CreditMemo memo = invoice.creditMemo();
        if (memo == null) {
            throw new InvoiceRefusal.NotCredited(String.valueOf(invoice.number()));
        }
        return pdf(issued(invoice, memo), "credit-memo-" + memo.number());
    }

    private Response pdf(InvoicePaper paper, String file) {
        return Respond.inline(papers.invoice(paper), Papers.PDF, file + ".pdf");
    }

    /** @param  memo that takes the invoice back in full, by the invoice's own figures; null for the invoice itself */
    private InvoicePaper issued(IssuedInvoice invoice, @Nullable CreditMemo memo) {
        View view = viewer.view();
        InvoiceTotals totals = invoice.totals();
        Money total = totals.gross().plus(totals.rounding());
        Money none = Money.zero(total.currency());
        Money paid = Money.sum(
                total.currency(),
                invoice.settlements().stream()
                        .map(IssuedInvoice.Settlement::amount)
                        .toList());
        return new InvoicePaper(
                letterheads.current(),
                memo == null ? InvoicePaper.Type.INVOICE : InvoicePaper.Type.CREDIT_MEMO,
                String.valueOf(memo == null ? invoice.number() : memo.number()),
                memo == null ? invoice.date() : memo.date(),
                memo == null ? invoice.dueDate() : null,
                view.shortDate(invoice.serviceDate()),
                memo == null
                        ? invoice.reference()
                        : view.t(
                                "invoices.paper.credits",
                                String.valueOf(invoice.number()),
                                view.shortDate(invoice.date())),
                invoice.address().onPaper(invoice.customerName()),
                workAt(invoice.visit()),
                invoice.lines().stream()
                        .map(line -> new InvoicePaper.Line(
                                names.line(line.serviceLine()),
                                line.description(),
                                detail(view, line.price(), line.adjustments(), line.origin()),
                                line.quantity(),
                                line.price().net(),
                                line.tax().category().name(),
                                line.tax().rate(),
                                line.net()))
                        .toList(),
                invoice.adjustments().stream()
                        .map(DocumentAdjustment::adjustment)
                        .map(InvoicePapers::onDocument)
                        .toList(),
                taxes(totals, invoice.exemptionReasons()),
                totals.lineSum(),
                totals.net(),
                totals.tax(),
                totals.gross(),
                // A credit memo gives the whole invoice back, however much of it had been paid before.
                memo == null ? paid : none,
                totals.rounding(),
                memo == null ? invoice.open() : total,
                memo == null ? terms(view, invoice) : "",
                memo == null ? invoice.note() : view.t("invoices.paper.credit-reason", memo.reason()),
                "",
                memo != null || invoice.creditMemo() == null ? none : total.minus(paid),
                memo == null ? view.today() : null);
    }

    private static String terms(View view, IssuedInvoice invoice) {
        CreditMemo memo = invoice.creditMemo();
        if (memo != null) {
            return view.t("invoices.paper.credited", String.valueOf(memo.number()), view.shortDate(memo.date()));
        }
        if (invoice.open().isZero()) {
            return view.t("invoices.paper.paid");
        }
        return view.t(
                invoice.dueDate().isBefore(view.today()) ? "invoices.paper.past-due" : "invoices.paper.terms",
                view.money(invoice.open()),
                view.shortDate(invoice.dueDate()));
    }

    /** A draft as it would look if it were issued today. */
    private InvoicePaper draft(InvoiceDraft draft) {
        View view = viewer.view();
        Draft content = draft.content();
        InvoiceTotals totals = draft.totals();
        Customer customer = readCustomer.customer(draft.customer());
        Map<TaxCategory, String> reasons = new HashMap<>();
        List<InvoicePaper.Line> lines = new ArrayList<>();
        for (int i = 0; i < content.lines().size(); i++) {
            var line = content.lines().get(i);
            TaxSetting tax = catalog.tax(line.taxCode(), content.serviceDate());
            reasons.put(tax.category(), tax.exemptionReason());
            lines.add(new InvoicePaper.Line(
                    names.line(line.serviceLine()),
                    line.description(),
                    detail(
                            view,
                            line.price(),
                            line.adjustments(),
                            draft.origins().get(line.id())),
                    line.quantity(),
                    line.price().net(),
                    tax.category().name(),
                    tax.rate(),
                    totals.lineNets().get(i)));
        }
        return new InvoicePaper(
                letterheads.current(),
                InvoicePaper.Type.DRAFT,
                "",
                view.today(),
                null,
                view.shortDate(content.serviceDate()),
                content.reference(),
                customer.address().onPaper(customer.name()),
                workAt(draft.visit()),
                lines,
                content.adjustments().stream()
                        .map(Draft.OnDocument::adjustment)
                        .map(InvoicePapers::onDocument)
                        .toList(),
                taxes(totals, reasons),
                totals.lineSum(),
                totals.net(),
                totals.tax(),
                totals.gross(),
                totals.prepaid(),
                totals.rounding(),
                totals.due(),
                view.t("invoices.paper.draft-terms"),
                content.note(),
                "");
    }

    private static String detail(
            View view, ItemPrice price, List<Adjustment> adjustments, @Nullable LineOrigin origin) {
        if (origin != null && origin.noCharge()) {
            return view.t("invoices.paper.given");
        }
        Stream<String> discount = price.discount().signum() == 0
                ? Stream.empty()
                : Stream.of(view.t("invoices.paper.discount", view.price(price.gross())));
        Stream<String> adjusted = adjustments.stream()
                .map(one -> view.t("invoices.paper.adjustment", one.reason(), view.money(one.signed())));
        return Stream.concat(discount, adjusted).collect(Collectors.joining("; "));
    }

    private static InvoicePaper.Adjustment onDocument(Adjustment adjustment) {
        return new InvoicePaper.Adjustment(adjustment.reason(), adjustment.signed());
    }

    private static List<InvoicePaper.Tax> taxes(InvoiceTotals totals, Map<TaxCategory, String> reasons) {
        return totals.breakdown().stream()
                .map(t -> new InvoicePaper.Tax(
                        t.rate().category().name(),
                        t.rate().rate(),
                        t.taxable(),
                        t.tax(),
                        reasons.getOrDefault(t.rate().category(), "")))
                .toList();
    }

    private List<String> workAt(@Nullable VisitId visit) {
        if (visit == null) {
            return List.of();
        }
        Site site = readCustomer.site(readVisits.visit(visit).site());
        return site.address().onPaper(site.name());
    }
}
