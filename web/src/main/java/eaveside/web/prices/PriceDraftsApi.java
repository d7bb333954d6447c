package eaveside.web.prices;

import eaveside.access.Role;
import eaveside.kernel.PriceBookId;
import eaveside.ledger.Books;
import eaveside.pricing.PublishPriceBook;
import eaveside.pricing.SavePriceBook;
import eaveside.web.Json;
import eaveside.web.prices.PriceBookJson.Book;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Writing a price book and putting it into force for scripts; the owner's alone. */
@Path("/api/price-books")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Prices")
@For(Role.OWNER)
public class PriceDraftsApi {
    private final SavePriceBook savePriceBook;
    private final PublishPriceBook publishPriceBook;
    private final PriceBooksPage shelf;
    private final Books books;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public PriceDraftsApi(
            SavePriceBook savePriceBook,
            PublishPriceBook publishPriceBook,
            PriceBooksPage shelf,
            Books books,
            Viewer viewer,
            AuditLog auditLog) {
        this.savePriceBook = savePriceBook;
        this.publishPriceBook = publishPriceBook;
        this.shelf = shelf;
        this.books = books;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /** @param  version of the draft as it was read */
    public record Publication(@Nullable Integer version) {}

    @PUT
    @Path("{id}")
    @Operation(summary = "Begins a draft, or writes the version named anew; the same again changes nothing")
    public Book save(@PathParam("id") String id, @Nullable Book body) {
        PriceBookId book = PriceBookId.of(id);
        Book sent = Json.required("body", body);
        savePriceBook.save(new SavePriceBook.Save(
                book, sent.version() == null ? 0 : sent.version(), sent.read(books.currency()), viewer.id()));
        return Book.of(shelf.book(book));
    }

    @POST
    @Path("{id}/publish")
    @Operation(summary = "Puts a draft into force from its first day on; it never changes again. The same is a retry")
    public Book publish(@PathParam("id") String id, @Nullable Publication body) {
        PriceBookId book = PriceBookId.of(id);
        int version = Json.required("version", Json.required("body", body).version());
        publishPriceBook.publish(new PublishPriceBook.Publish(book, version, viewer.id()));
        auditLog.done("price-book.publish", book);
        return Book.of(shelf.book(book));
    }
}
