package eaveside.web.prices;

import eaveside.access.Role;
import eaveside.kernel.PriceBookId;
import eaveside.ledger.Books;
import eaveside.pricing.ReadPriceBooks;
import eaveside.web.prices.PriceBookJson.Book;
import eaveside.web.security.For;
import eaveside.web.security.WebRefusal;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Reading price books for scripts. */
@Path("/api/price-books")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Prices")
@For({Role.OWNER, Role.OFFICE})
public class PriceBooksApi {
    private static final int PAGE = 50;

    private final ReadPriceBooks readPriceBooks;
    private final PriceBooksPage shelf;
    private final Books books;

    @Inject
    public PriceBooksApi(ReadPriceBooks readPriceBooks, PriceBooksPage shelf, Books books) {
        this.readPriceBooks = readPriceBooks;
        this.shelf = shelf;
        this.books = books;
    }

    /** A book in the list; a draft has no number. */
    public record BookLine(String id, @Nullable Long number, String name, String from) {}

    /** Drafts, and a page of the published books. */
    public record BookList(
            List<BookLine> drafts,
            List<BookLine> published,
            @Nullable String next) {}

    @GET
    @Transactional
    @Operation(summary = "Lists the drafts and the published price books, the newest first")
    public BookList list(@QueryParam("after") @Nullable String after) {
        var published = readPriceBooks.published(after, PAGE);
        return new BookList(lines(readPriceBooks.drafts()), lines(published.rows()), published.next());
    }

    private static List<BookLine> lines(List<ReadPriceBooks.Summary> books) {
        return books.stream()
                .map(b -> new BookLine(
                        b.id().toString(), b.number(), b.name(), b.from().toString()))
                .toList();
    }

    @GET
    @Path("in-force")
    @Transactional
    @Operation(summary = "Reads the price book in force on a day, today where none is named")
    public Book inForce(@QueryParam("date") @Nullable String date) {
        PriceBookId id = readPriceBooks
                .inForce(date == null || date.isEmpty() ? books.today() : day(date))
                .id();
        return Book.of(shelf.book(id));
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "Reads a price book, published or a draft")
    public Book book(@PathParam("id") String id) {
        return Book.of(shelf.book(PriceBookId.of(id)));
    }

    private static LocalDate day(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new WebRefusal.Unreadable("The date '" + text + "' is not a day such as 2026-03-31");
        }
    }
}
