package eaveside.web.prices;

import eaveside.access.Role;
import eaveside.catalog.Catalog;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Slice;
import eaveside.ledger.Books;
import eaveside.pricing.ReadPriceBooks;
import eaveside.pricing.ReadPriceBooks.Summary;
import eaveside.web.Csv;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Price books to read: which there are, what one says, and two side by side. */
@Path("/prices")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class PricesResource {
    private static final int PAGE = 30;

    private final ReadPriceBooks readPriceBooks;
    private final PriceBooksPage shelf;
    private final Catalog catalog;
    private final Books books;
    private final Viewer viewer;
    private final Names names;

    @Context
    UriInfo uri;

    @Inject
    public PricesResource(
            ReadPriceBooks readPriceBooks,
            PriceBooksPage shelf,
            Catalog catalog,
            Books books,
            Viewer viewer,
            Names names) {
        this.readPriceBooks = readPriceBooks;
        this.shelf = shelf;
        this.catalog = catalog;
        this.books = books;
        this.viewer = viewer;
        this.names = names;
    }

    /** A published book in the list, with where it stands. */
    public record Published(Summary book, Shown.State state) {}

    /** All books. */
    public record PricesPage(
            @Nullable Shown inForce,
            List<Summary> drafts,
            List<Published> published,
            @Nullable String more) implements Page {
        @Override
        public String template() {
            return "prices/prices.jte";
        }
    }

    /** One book as a price list. */
    public record BookPage(
            Shown book, Listing listing, @Nullable Shown inForce, Names names) implements Page {
        @Override
        public String template() {
            return "prices/book.jte";
        }

        /** Whether there is another book in force to compare it with. */
        public boolean isComparable() {
            return inForce != null && !inForce.id().equals(book.id());
        }
    }

    /** Two books side by side; no comparison until both are chosen. */
    public record ComparePage(
            Fields fields,
            Map<String, String> choices,
            @Nullable Shown before,
            @Nullable Shown after,
            @Nullable Comparison comparison)
            implements Page {
        @Override
        public String template() {
            return "prices/compare.jte";
        }
    }

    @GET
    @Transactional
    public PricesPage prices(@QueryParam("after") @Nullable String after) {
        Optional<Shown> current = shelf.inForce(books.today());
        Slice<Summary> published = readPriceBooks.published(after, PAGE);
        return new PricesPage(
                current.orElse(null),
                readPriceBooks.drafts(),
                published.rows().stream()
                        .map(book -> new Published(book, shelf.state(book, current)))
                        .toList(),
                published.next() == null ? null : "/prices?after=" + published.next());
    }

    @GET
    @Path("{id}")
    @Transactional
    public BookPage book(@PathParam("id") String id) {
        Shown book = shelf.book(PriceBookId.of(id));
        return new BookPage(
                book,
                Listing.of(book.list(), catalog),
                shelf.inForce(books.today()).orElse(null),
                names);
    }

    @GET
    @Path("{id}/list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(@PathParam("id") String id) {
        View view = viewer.view();
        List<List<String>> rows = new ArrayList<>();
        for (var section :
                Listing.of(shelf.book(PriceBookId.of(id)).list(), catalog).sections()) {
            for (var item : section.items()) {
                for (var step : item.price().steps()) {
                    rows.add(List.of(
                            section.line().name(),
                            item.serviceItem().code(),
                            item.serviceItem().name(),
                            step.from().value().toPlainString(),
                            step.price().amount().toPlainString(),
                            step.price().base().value().toPlainString(),
                            view.unit(step.price().base().unit()),
                            ""));
                }
                for (var surcharge : item.price().surcharges()) {
                    rows.add(List.of(
                            section.line().name(),
                            item.serviceItem().code(),
                            item.serviceItem().name(),
                            "",
                            "",
                            "",
                            "",
                            view.t(
                                    "prices.surcharge",
                                    PriceWords.rate(view, surcharge).substring(1),
                                    PriceWords.when(view, surcharge))));
                }
            }
        }
        return Csv.download(
                "prices",
                List.of(
                        "service line",
                        "code",
                        "serviceItem",
                        "from quantity",
                        "price",
                        "per quantity",
                        "unit",
                        "surcharge"),
                rows);
    }

    @GET
    @Path("compare")
    @Transactional
    public ComparePage compare() {
        Fields fields = viewer.fields(uri.getQueryParameters());
        View view = viewer.view();
        Shown before = chosen(fields, "old");
        Shown after = chosen(fields, "new");
        Comparison comparison =
                before == null || after == null ? null : Comparison.of(before.list(), after.list(), catalog, view);
        return new ComparePage(fields, shelf.choices(view.t("prices.draft-in-choice")), before, after, comparison);
    }

    private @Nullable Shown chosen(Fields fields, String name) {
        String id = fields.typed(name);
        return id.isEmpty() ? null : shelf.book(PriceBookId.of(id));
    }
}
