package eaveside.web.invoices;

import eaveside.access.Role;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceRefusal;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.InvoiceId;
import eaveside.reports.InvoicePaper;
import eaveside.reports.Papers;
import eaveside.web.security.For;
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
@For({Role.OWNER, Role.OFFICE})
public class InvoicePaperResource {
    private final ReadInvoices readInvoices;
    private final InvoicePapers invoicePapers;
    private final Papers papers;

    @Inject
    public InvoicePaperResource(ReadInvoices readInvoices, InvoicePapers invoicePapers, Papers papers) {
        this.readInvoices = readInvoices;
        this.invoicePapers = invoicePapers;
        this.papers = papers;
    }

    @GET
    @Path("{id}.pdf")
    @Transactional
    public Response invoice(@PathParam("id") String id) {
        InvoiceId invoice = InvoiceId.of(id);
        Optional<InvoiceDraft> draft = readInvoices.draftIfThere(invoice);
        return pdf(
                "invoice",
                invoice,
                draft.isPresent()
                        ? invoicePapers.draft(draft.get())
                        : invoicePapers.invoice(readInvoices.invoice(invoice)));
    }

    @GET
    @Path("{id}/credit-memo.pdf")
    @Transactional
    public Response creditMemo(@PathParam("id") String id) {
        IssuedInvoice invoice = readInvoices.invoice(InvoiceId.of(id));
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
