package eaveside.web.prices;

import eaveside.access.Role;
import eaveside.catalog.Catalog;
import eaveside.kernel.PriceBookId;
import eaveside.ledger.Books;
import eaveside.pricing.PriceBook;
import eaveside.pricing.PriceBookSummary;
import eaveside.pricing.PriceBookView;
import eaveside.pricing.ReadPriceBooks;
import eaveside.web.Csv;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Price books to read: which there are, what one says, and two side by side. */
@Path("/prices")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class PricePages extends ListResource<PriceBookSummary> {
    private static final int CHOICES = 200;

    @Inject
    ReadPriceBooks readPriceBooks;

    @Inject
    Catalog catalog;

    @Inject
    Books books;

    @Inject
    Names names;

    /** One book as a price list. */
    public record BookPage(
            PriceBookView book,
            List<BookSections.Section> sections,
            @Nullable PriceBookId inForce,
            Names names) implements Page {
        @Override
        public String template() {
            return "prices/book.jte";
        }

        /** Whether there is another book in force to compare it with. */
        public boolean isComparable() {
            return inForce != null && !inForce.equals(book.id());
        }
    }

    /** Two books side by side; no comparison until both are chosen. */
    public record ComparePage(
            Fields fields,
            Map<String, String> choices,
            @Nullable PriceBookView before,
            @Nullable PriceBookView after,
            @Nullable Comparison comparison)
            implements Page {
        @Override
        public String template() {
            return "prices/compare.jte";
        }
    }

    @Override
    protected Listing<PriceBookSummary> list() {
        PriceBookId current = inForce();
        Listing<PriceBookSummary> list = Listing.<PriceBookSummary>of(
                        "prices", "/prices", query -> readPriceBooks.list(query.after(), query.size()))
                .column("number", PriceBookSummary::number)
                .opening("name", book -> "/prices/" + book.id())
                .columns("from", "status")
                .action("compare", "/prices/compare" + (current == null ? "" : "?old=" + current));
        return viewer.view().is(Role.OWNER)
                ? list.action("new", "/prices/new" + (current == null ? "" : "?from=" + current))
                : list;
    }

    private @Nullable PriceBookId inForce() {
        return readPriceBooks.findInForce(books.today()).map(PriceBook::id).orElse(null);
    }

    @GET
    @Path("{id}")
    @Transactional
    public BookPage book(@PathParam("id") PriceBookId id) {
        PriceBookView book = readPriceBooks.view(id);
        return new BookPage(book, BookSections.of(book.list(), catalog), inForce(), names);
    }

    @GET
    @Path("{id}/list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(@PathParam("id") PriceBookId id) {
        View view = viewer.view();
        List<List<String>> rows = new ArrayList<>();
        for (var section : BookSections.of(readPriceBooks.view(id).list(), catalog)) {
            for (var item : section.items()) {
                List<String> service = List.of(
                        section.line().name(),
                        item.serviceItem().code(),
                        item.serviceItem().name());
                for (var step : item.price().steps()) {
                    rows.add(row(
                            service,
                            step.from().value().toPlainString(),
                            step.price().amount().toPlainString(),
                            step.price().base().value().toPlainString(),
                            view.unit(step.price().base().unit()),
                            ""));
                }
                for (var surcharge : item.price().surcharges()) {
                    rows.add(row(service, "", "", "", "", PriceWords.surcharge(view, surcharge)));
                }
            }
        }
        return Csv.download(
                "prices",
                Stream.of("serviceLine", "code", "serviceItem", "step.from", "price", "per", "unit", "surcharge")
                        .map(column -> view.t("prices." + column))
                        .toList(),
                rows);
    }

    private static List<String> row(List<String> service, String... more) {
        List<String> row = new ArrayList<>(service);
        row.addAll(List.of(more));
        return row;
    }

    @GET
    @Path("compare")
    @Transactional
    public ComparePage compare(@Context UriInfo asked) {
        Fields fields = viewer.fields(asked.getQueryParameters());
        View view = viewer.view();
        PriceBookView before = chosen(fields, "old");
        PriceBookView after = chosen(fields, "new");
        Map<String, String> choices = new LinkedHashMap<>();
        readPriceBooks
                .newest(CHOICES)
                .forEach(book -> choices.put(
                        book.id().toString(),
                        book.number() == null
                                ? view.t("prices.draft-in-choice", book.name())
                                : book.number() + " " + book.name()));
        return new ComparePage(
                fields,
                choices,
                before,
                after,
                before == null || after == null ? null : Comparison.of(before.list(), after.list(), catalog, view));
    }

    private @Nullable PriceBookView chosen(Fields fields, String name) {
        String id = fields.typed(name);
        return id.isEmpty() ? null : readPriceBooks.view(PriceBookId.of(id));
    }
}
