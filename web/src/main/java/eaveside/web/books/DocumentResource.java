package eaveside.web.books;

import eaveside.access.Role;
import eaveside.kernel.DocumentId;
import eaveside.ledger.Books;
import eaveside.ledger.DocumentKind;
import eaveside.ledger.PostJournal;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReadLedger.DocumentView;
import eaveside.ledger.ReverseDocument;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
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

/** A posted document with its entries; journals are reversed here, other documents where they were entered. */
@Path("/documents")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class DocumentResource {
    private final ReadLedger readLedger;
    private final PostJournal postJournal;
    private final Books books;
    private final Viewer viewer;
    private final Names names;

    @Inject
    public DocumentResource(ReadLedger readLedger, PostJournal postJournal, Books books, Viewer viewer, Names names) {
        this.readLedger = readLedger;
        this.postJournal = postJournal;
        this.books = books;
        this.viewer = viewer;
        this.names = names;
    }

    /** One document whole. */
    public record DocumentPage(DocumentView document, Names names, DocumentId reversalId, Fields fields)
            implements Page {
        @Override
        public String template() {
            return "books/document.jte";
        }

        /** Whether this page offers to reverse it. */
        public boolean isReversibleHere() {
            DocumentKind kind = document.posted().kind();
            return (kind == DocumentKind.JOURNAL || kind == DocumentKind.COST) && document.reversedBy() == null;
        }
    }

    @GET
    @Path("{id}")
    @Transactional
    public DocumentPage document(@PathParam("id") String id) {
        return page(DocumentId.of(id), Fields.empty());
    }

    private DocumentPage page(DocumentId id, Fields fields) {
        return new DocumentPage(readLedger.document(id), names, DocumentId.next(), fields);
    }

    @POST
    @Path("{id}/reverse")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response reverse(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        DocumentId original = DocumentId.of(id);
        Fields fields = Fields.of(form);
        String reason = fields.text("reason");
        DocumentId reversal = new DocumentId(fields.id("id"));
        boolean posted = fields.run(() -> postJournal.reverse(
                new ReverseDocument.Reversal(reversal, original, books.today(), reason, viewer.id())));
        return posted
                ? Response.seeOther(URI.create("/documents/" + reversal + "?done=books.reversed"))
                        .build()
                : Response.status(fields.status())
                        .entity(page(original, fields))
                        .build();
    }
}
