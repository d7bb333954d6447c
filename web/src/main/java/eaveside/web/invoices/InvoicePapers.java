package eaveside.web.invoices;

import eaveside.catalog.Catalog;
import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxSetting;
import eaveside.customers.Address;
import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.invoicing.Adjustment;
import eaveside.invoicing.Draft;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceInput.DocumentAdjustment;
import eaveside.invoicing.InvoiceTotals;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.ItemPrice;
import eaveside.invoicing.LineOrigin;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.VisitId;
import eaveside.reports.InvoicePaper;
import eaveside.visits.ReadVisits;
import eaveside.web.Names;
import eaveside.web.View;
import eaveside.web.papers.Letterheads;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Invoices, credit memos and drafts as the plain records that get printed: the stored figures, none worked out anew. An
 * invoice states the balance of the day that it is printed on.
 */
@Dependent
public class InvoicePapers {
    @Inject
    ReadCustomer readCustomer;

    @Inject
    ReadVisits readVisits;

    @Inject
    Catalog catalog;

    @Inject
    Letterheads letterheads;

    @Inject
    Names names;

    @Inject
    Viewer viewer;

    InvoicePaper invoice(IssuedInvoice invoice) {
        View view = viewer.view();
        return issued(
                view,
                invoice,
                InvoicePaper.Type.INVOICE,
                String.valueOf(invoice.number()),
                invoice.date(),
                invoice.reference(),
                terms(view, invoice),
                invoice.note());
    }

    private static String terms(View view, IssuedInvoice invoice) {
        IssuedInvoice.CreditMemo note = invoice.creditMemo();
        if (note != null) {
            return view.t("invoices.paper.credited", String.valueOf(note.number()), view.shortDate(note.date()));
        }
        if (invoice.open().isZero()) {
            return view.t("invoices.paper.paid");
        }
        return view.t(
                invoice.dueDate().isBefore(view.today()) ? "invoices.paper.past-due" : "invoices.paper.terms",
                view.money(invoice.open()),
                view.shortDate(invoice.dueDate()));
    }

    /** The note that takes an invoice back in full: the invoice's own figures. */
    InvoicePaper creditMemo(IssuedInvoice invoice, IssuedInvoice.CreditMemo note) {
        View view = viewer.view();
        return issued(
                view,
                invoice,
                InvoicePaper.Type.CREDIT_MEMO,
                String.valueOf(note.number()),
                note.date(),
                view.t("invoices.paper.credits", String.valueOf(invoice.number()), view.shortDate(invoice.date())),
                "",
                view.t("invoices.paper.credit-reason", note.reason()));
    }

    private InvoicePaper issued(
            View view,
            IssuedInvoice invoice,
            InvoicePaper.Type type,
            String number,
            LocalDate date,
            String reference,
            String terms,
            String note) {
        boolean credit = type == InvoicePaper.Type.CREDIT_MEMO;
        InvoiceTotals totals = invoice.totals();
        Money none = Money.zero(totals.gross().currency());
        Money total = totals.gross().plus(totals.rounding());
        Money paid = Money.sum(
                total.currency(),
                invoice.settlements().stream()
                        .map(IssuedInvoice.Settlement::amount)
                        .toList());
        return new InvoicePaper(
                letterheads.current(),
                type,
                number,
                date,
                credit ? null : invoice.dueDate(),
                view.shortDate(invoice.serviceDate()),
                reference,
                lines(invoice.customerName(), invoice.address()),
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
                credit ? none : paid,
                totals.rounding(),
                credit ? total : invoice.open(),
                terms,
                note,
                "",
                credit || invoice.creditMemo() == null ? none : total.minus(paid),
                credit ? null : view.today());
    }

    /** A draft as it would look if it were issued today. */
    InvoicePaper draft(InvoiceDraft draft) {
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
                lines(customer.name(), customer.address()),
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

    /** What the file is called. */
    static String file(String type, String number, InvoiceId id) {
        return type + "-" + (number.isEmpty() ? id.toString() : number) + ".pdf";
    }

    private static String detail(
            View view, ItemPrice price, List<Adjustment> adjustments, @Nullable LineOrigin origin) {
        if (origin != null && origin.noCharge()) {
            return view.t("invoices.paper.given");
        }
        List<String> details = new ArrayList<>();
        if (price.discount().signum() != 0) {
            details.add(view.t("invoices.paper.discount", view.price(price.gross())));
        }
        for (Adjustment adjustment : adjustments) {
            details.add(view.t("invoices.paper.adjustment", adjustment.reason(), view.money(adjustment.signed())));
        }
        return String.join("; ", details);
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
        return lines(site.name(), site.address());
    }

    private static List<String> lines(String name, Address address) {
        String town = (address.city() + " " + (address.region() + " " + address.zipCode()).strip()).strip();
        return List.of(name, address.street(), town);
    }
}
