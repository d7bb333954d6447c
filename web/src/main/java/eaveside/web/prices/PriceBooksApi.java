package eaveside.web.prices;

import eaveside.access.Role;
import eaveside.kernel.PriceBookId;
import eaveside.ledger.Books;
import eaveside.pricing.OfferingPrice;
import eaveside.pricing.PriceList;
import eaveside.pricing.ReadPriceBooks;
import eaveside.pricing.Surcharge;
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
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Price books for scripts. */
@Path("/api/price-books")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Prices")
@For({Role.OWNER, Role.OFFICE})
public class PriceBooksApi {
    private static final int PAGE = 50;

    private final ReadPriceBooks readPriceBooks;
    private final BookShelf shelf;
    private final Books books;

    @Inject
    public PriceBooksApi(ReadPriceBooks readPriceBooks, BookShelf shelf, Books books) {
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

    /** From a quantity on. */
    public record Step(BigDecimal from, BigDecimal price) {}

    /** Either a share of the price or a fixed amount is present. */
    public record Extra(
            String attribute,
            int atLeast,
            @Nullable BigDecimal percent,
            @Nullable BigDecimal amount) {}

    /** Prices are per the base quantity; the unit is a code of UN/ECE Recommendation 20. */
    public record Price(
            String offering, BigDecimal baseQuantity, String unit, List<Step> steps, List<Extra> surcharges) {}

    /** The least of a service line. */
    public record Minimum(String serviceLine, BigDecimal amount) {}

    /** A whole book, net of tax. */
    public record Book(
            String id,
            @Nullable Long number,
            String state,
            String name,
            String from,
            String currency,
            BigDecimal visitMinimum,
            BigDecimal sharedReductionPercent,
            List<Minimum> lineMinimums,
            List<Price> prices) {
        static Book of(Shown book) {
            PriceList list = book.list();
            return new Book(
                    book.id().toString(),
                    book.number(),
                    book.state().name(),
                    list.name(),
                    list.from().toString(),
                    list.currency().getCode(),
                    list.visitMinimum().amount(),
                    list.sharedReduction().value(),
                    list.lineMinimums().stream()
                            .map(m -> new Minimum(
                                    m.serviceLine().toString(), m.amount().amount()))
                            .toList(),
                    list.prices().stream().map(Book::price).toList());
        }

        private static Price price(OfferingPrice price) {
            List<Extra> extras = new ArrayList<>();
            for (Surcharge surcharge : price.surcharges()) {
                extras.add(
                        switch (surcharge.rate()) {
                            case Surcharge.OfPrice share ->
                                new Extra(
                                        surcharge.attribute().name(),
                                        surcharge.atLeast(),
                                        share.percent().value(),
                                        null);
                            case Surcharge.PerUnit fixed ->
                                new Extra(
                                        surcharge.attribute().name(),
                                        surcharge.atLeast(),
                                        null,
                                        fixed.amount().amount());
                        });
            }
            return new Price(
                    price.offering().toString(),
                    price.base().value(),
                    price.base().unit().code(),
                    price.steps().stream()
                            .map(s -> new Step(s.from().value(), s.price().amount()))
                            .toList(),
                    extras);
        }
    }

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
