package eaveside.web.books;

import eaveside.access.Role;
import eaveside.access.Sight;
import eaveside.inventory.ReadStock;
import eaveside.inventory.ReverseStockDocument;
import eaveside.inventory.StockEntryFilter;
import eaveside.inventory.StockEntryLine;
import eaveside.kernel.DocumentId;
import eaveside.ledger.Books;
import eaveside.ledger.DocumentType;
import eaveside.ledger.DocumentView;
import eaveside.ledger.EntryLine;
import eaveside.ledger.PostJournal;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.YearMonth;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** A posted document with its entries; journals are reversed here, other documents where they were entered. */
@Path("/documents")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class DocumentResource {
    private static final Set<DocumentType> JOURNALS = EnumSet.of(DocumentType.JOURNAL, DocumentType.EXPENSE);
    private static final Set<DocumentType> STOCK =
            EnumSet.of(DocumentType.RECEIPT, DocumentType.TRANSFER, DocumentType.COUNT, DocumentType.WRITE_OFF);
    private static final int STOCK_LINES = 200;

    private final ReadLedger readLedger;
    private final ReadStock readStock;
    private final OpenAccounts openAccounts;
    private final PostJournal postJournal;
    private final ReverseStockDocument reverseStockDocument;
    private final Books books;
    private final Viewer viewer;
    private final Names names;

    @Inject
    public DocumentResource(
            ReadLedger readLedger,
            ReadStock readStock,
            OpenAccounts openAccounts,
            PostJournal postJournal,
            ReverseStockDocument reverseStockDocument,
            Books books,
            Viewer viewer,
            Names names) {
        this.readLedger = readLedger;
        this.readStock = readStock;
        this.openAccounts = openAccounts;
        this.postJournal = postJournal;
        this.reverseStockDocument = reverseStockDocument;
        this.books = books;
        this.viewer = viewer;
        this.names = names;
    }

    /**
     * One document whole.
     *
     * @param  entries those that the viewer may read
     * @param  stock   quantities; their values only where the viewer may see what they are part of
     */
    public record DocumentPage(
            DocumentView document,
            List<EntryLine> entries,
            List<StockEntryLine> stock,
            boolean withValues,
            boolean reversible,
            Names names,
            DocumentId reversalId,
            Fields fields)
            implements Page {
        @Override
        public String template() {
            return "books/document.jte";
        }

        /** Whether it closes a month. */
        public boolean isClose() {
            return document.posted().type() == DocumentType.PERIOD_CLOSE;
        }

        public YearMonth month() {
            return YearMonth.from(document.posted().postingDate());
        }

        /** Whether this page offers to reverse it. */
        public boolean isReversibleHere() {
            DocumentType type = document.posted().type();
            return (JOURNALS.contains(type) || STOCK.contains(type)) && reversible && document.reversedBy() == null;
        }
    }

    @GET
    @Path("{id}")
    @Transactional
    public DocumentPage document(@PathParam("id") String id) {
        return page(DocumentId.of(id), Fields.empty());
    }

    private DocumentPage page(DocumentId id, Fields fields) {
        DocumentView document = readLedger.document(id);
        boolean ofStock = STOCK.contains(document.posted().type());
        return new DocumentPage(
                document,
                openAccounts.among(document),
                readStock.entries(StockEntryFilter.of(id), null, STOCK_LINES).rows(),
                ofStock || viewer.sees(Sight.COSTS) || openAccounts.areAll(),
                ofStock || openAccounts.areAll(),
                names,
                DocumentId.next(),
                fields);
    }

    @POST
    @Path("{id}/reverse")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response reverse(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        DocumentId original = DocumentId.of(id);
        if (!openAccounts.areAll()
                && !STOCK.contains(readLedger.document(original).posted().type())) {
            throw new WebRefusal.NotForYourRole();
        }
        Fields fields = viewer.fields(form);
        String reason = fields.text("reason");
        DocumentId reversal = new DocumentId(fields.id("id"));
        boolean posted = fields.run(() -> {
            var mirror = new ReverseDocument.Reversal(reversal, original, books.today(), reason, viewer.id());
            if (STOCK.contains(readLedger.document(original).posted().type())) {
                reverseStockDocument.reverse(mirror);
            } else {
                postJournal.reverse(mirror);
            }
        });
        if (posted) {}
        return posted
                ? Response.seeOther(URI.create("/documents/" + reversal + "?done=books.reversed"))
                        .build()
                : Response.status(fields.status())
                        .entity(page(original, fields))
                        .build();
    }
}
