package eaveside.web.invoices;

import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceRefusal;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.InvoiceId;
import eaveside.reports.InvoicePaper;
import eaveside.reports.Papers;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.util.Optional;

/** Invoices and credit memos on paper. */
@Path("/invoices")
@Dependent
@Produces(Papers.PDF)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class InvoicePaperResource {
    @Inject
    ReadInvoices readInvoices;

    @Inject
    InvoicePapers invoicePapers;

    @Inject
    Papers papers;

    @GET
    @Path("{id}.pdf")
    @Transactional
    public Response invoice(@PathParam("id") InvoiceId id) {
        Optional<InvoiceDraft> draft = readInvoices.draftIfThere(id);
        return pdf(
                "invoice",
                id,
                draft.isPresent() ? invoicePapers.draft(draft.get()) : invoicePapers.invoice(readInvoices.invoice(id)));
    }

    @GET
    @Path("{id}/credit-memo.pdf")
    @Transactional
    public Response creditMemo(@PathParam("id") InvoiceId id) {
        IssuedInvoice invoice = readInvoices.invoice(id);
        IssuedInvoice.CreditMemo note = invoice.creditMemo();
        if (note == null) {
            throw new InvoiceRefusal.NotCredited(String.valueOf(invoice.number()));
        }
        return pdf("credit-memo", invoice.id(), invoicePapers.creditMemo(invoice, note));
    }

    private Response pdf(String type, InvoiceId id, InvoicePaper paper) {
        return Response.ok(papers.invoice(paper))
                .type(Papers.PDF)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "inline; filename=\"" + InvoicePapers.file(type, paper.number(), id) + "\"")
                .build();
    }
}
