package eaveside.web.books;

import eaveside.access.Sight;
import eaveside.inventory.ReadStock;
import eaveside.inventory.ReverseStockDocument;
import eaveside.inventory.StockEntryFilter;
import eaveside.inventory.StockEntryLine;
import eaveside.kernel.DocumentId;
import eaveside.ledger.DocumentType;
import eaveside.ledger.DocumentView;
import eaveside.ledger.EntryLine;
import eaveside.ledger.PostJournal;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.forms.Form;
import eaveside.web.forms.PageResource;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.WebRefusal;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Response;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** A posted document with its entries; journals and stock documents are reversed here, others where they were entered. */
@Path("/documents")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class DocumentPages extends PageResource {
    private static final Set<DocumentType> JOURNALS = EnumSet.of(DocumentType.JOURNAL, DocumentType.EXPENSE);
    private static final Set<DocumentType> STOCK =
            EnumSet.of(DocumentType.RECEIPT, DocumentType.TRANSFER, DocumentType.COUNT, DocumentType.WRITE_OFF);
    private static final int STOCK_LINES = 200;

    @Inject
    ReadLedger readLedger;

    @Inject
    ReadStock readStock;

    @Inject
    OpenAccounts openAccounts;

    @Inject
    PostJournal postJournal;

    @Inject
    ReverseStockDocument reverseStockDocument;

    @Inject
    Names names;

    /**
     * One document whole.
     *
     * @param  entries    those that the viewer may read
     * @param  stock      quantities; their values only where the viewer may see what they are part of
     * @param  reversible whether this page offers to reverse it
     */
    public record DocumentPage(
            DocumentView document,
            List<EntryLine> entries,
            List<StockEntryLine> stock,
            boolean withValues,
            boolean reversible,
            Names names,
            Form<Reversal> form)
            implements Page {}

    @GET
    @Path("{id}")
    @Transactional
    public DocumentPage document(@PathParam("id") DocumentId id) {
        return page(id, viewer.fresh(Reversal.class));
    }

    private DocumentPage page(DocumentId id, Form<Reversal> form) {
        DocumentView document = readLedger.document(id);
        boolean ofStock = STOCK.contains(document.type());
        boolean reversible = ofStock || JOURNALS.contains(document.type()) && openAccounts.areAll();
        return new DocumentPage(
                document,
                openAccounts.among(document),
                readStock.entries(StockEntryFilter.of(id), null, STOCK_LINES).rows(),
                ofStock || viewer.sees(Sight.COSTS) || openAccounts.areAll(),
                reversible && document.reversedBy() == null,
                names,
                form.labeled("books"));
    }

    @POST
    @Path("{original}/reverse")
    public Response reverse(@PathParam("original") DocumentId original, Form<Reversal> form) {
        boolean ofStock = STOCK.contains(readLedger.document(original).type());
        if (!ofStock && !openAccounts.areAll()) {
            throw new WebRefusal.NotForYourRole();
        }
        return form.run(ofStock ? reverseStockDocument::reverse : postJournal::reverse)
                ? Respond.to("/documents/" + form.fields().typed("id"), "books.reversed")
                : Respond.again(form.fields(), page(original, form));
    }
}
