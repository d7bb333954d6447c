package eaveside.web.prices;

import eaveside.access.Role;
import eaveside.catalog.Catalog;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Records;
import eaveside.ledger.Books;
import eaveside.pricing.PriceBook;
import eaveside.pricing.PriceBookDraft;
import eaveside.pricing.PriceBookSummary;
import eaveside.pricing.PriceBookView;
import eaveside.pricing.PriceList;
import eaveside.pricing.PublishPriceBook;
import eaveside.pricing.ReadPriceBooks;
import eaveside.pricing.SavePriceBook;
import eaveside.web.Csv;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.forms.Options;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Price books to read: which there are, what one says, and two side by side; and, for the owner alone, drafts to write and to
 * publish.
 */
@Path("/prices")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class PricePages extends ListResource<PriceBookSummary> {
    private static final int CHOICES = 200;
    private static final int LONGEST_NAME = 100;

    @Inject
    ReadPriceBooks readPriceBooks;

    @Inject
    SavePriceBook savePriceBook;

    @Inject
    PublishPriceBook publishPriceBook;

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
        /** Whether there is another book in force to compare it with. */
        public boolean isComparable() {
            return inForce != null && !inForce.equals(book.id());
        }
    }

    /** Two books side by side; no comparison until both are chosen. */
    public record ComparePage(
            Fields fields,
            Map<String, String> choices,
            @Nullable Comparison comparison) implements Page {}

    /**
     * The form.
     *
     * @param  conflict what is stored now (before) and what was typed (after), where another user saved first
     */
    public record DraftPage(
            PriceBookId id,
            DraftForm draft,
            String currency,
            @Nullable Comparison conflict) implements Page {}

    /** The question before publishing, with what it would change of the book that is in force until then. */
    public record PublishPage(PriceBookView book, @Nullable Comparison comparison, Fields fields) implements Page {}

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
        return Csv.download(
                "prices",
                Stream.of("serviceLine", "code", "serviceItem", "step.from", "price", "per", "unit", "surcharge")
                        .map(column -> view.t("prices." + column))
                        .toList(),
                BookSections.of(readPriceBooks.view(id).list(), catalog).stream()
                        .flatMap(section -> section.items().stream()
                                .flatMap(item -> rows(section.line().name(), item, view)))
                        .toList());
    }

    /** A row for each step and each surcharge of a service. */
    private static Stream<List<String>> rows(String line, BookSections.Item item, View view) {
        Stream<List<String>> steps = item.price().steps().stream()
                .map(step -> List.of(
                        step.from().value().toPlainString(),
                        step.price().amount().toPlainString(),
                        step.price().base().value().toPlainString(),
                        view.unit(step.price().base().unit()),
                        ""));
        Stream<List<String>> surcharges = item.price().surcharges().stream()
                .map(surcharge -> List.of("", "", "", "", PriceWords.surcharge(view, surcharge)));
        List<String> service =
                List.of(line, item.serviceItem().code(), item.serviceItem().name());
        return Stream.concat(steps, surcharges)
                .map(row -> Stream.concat(service.stream(), row.stream()).toList());
    }

    @GET
    @Path("compare")
    @Transactional
    public ComparePage compare() {
        Fields fields = viewer.fields(asked.getQueryParameters());
        View view = viewer.view();
        PriceList before = chosen(fields, "old");
        PriceList after = chosen(fields, "new");
        return new ComparePage(
                fields,
                Options.of(readPriceBooks.newest(CHOICES), PriceBookSummary::id, book -> choice(book, view)),
                before == null || after == null ? null : Comparison.of(before, after, catalog, view));
    }

    private @Nullable PriceList chosen(Fields fields, String name) {
        String id = fields.typed(name);
        return id.isEmpty() ? null : readPriceBooks.view(PriceBookId.of(id)).list();
    }

    private static String choice(PriceBookSummary book, View view) {
        return book.number() == null
                ? view.t("prices.draft-in-choice", book.name())
                : book.number() + " " + book.name();
    }

    /** @param from the book to copy */
    @GET
    @Path("new")
    @RolesAllowed(Roles.OWNER)
    @Transactional
    public DraftPage fresh(@QueryParam("from") @Nullable PriceBookId from) {
        // Without any book nothing can be quoted yet: the first one is wanted at once.
        LocalDate today = books.today();
        LocalDate begins =
                readPriceBooks.isAnyPublished() ? today.withDayOfMonth(1).plusMonths(1) : today;
        PriceBookId id = PriceBookId.next();
        Form<PriceBookDraft> form = from == null
                ? viewer.form(
                        PriceBookDraft.class,
                        Map.of("visitMinimum", "0", "sharedReduction", "0", "from", begins.toString()))
                : showing(new PriceBookDraft(id, copy(readPriceBooks.view(from).list(), begins), 0));
        return page(id, form, null);
    }

    private PriceList copy(PriceList list, LocalDate begins) {
        String name = viewer.view().t("prices.copy-of", list.name());
        return Records.with(
                Records.with(list, "from", begins), "name", name.substring(0, Math.min(LONGEST_NAME, name.length())));
    }

    @GET
    @Path("{id}/edit")
    @RolesAllowed(Roles.OWNER)
    @Transactional
    public Response edit(@PathParam("id") PriceBookId id) {
        PriceBookView book = readPriceBooks.view(id);
        return book.isDraft()
                ? Response.ok(page(id, showing(new PriceBookDraft(id, book.list(), book.version())), null))
                        .build()
                : Response.seeOther(URI.create("/prices/" + id)).build();
    }

    @POST
    @Path("{id}")
    @RolesAllowed(Roles.OWNER)
    public Response save(@PathParam("id") PriceBookId id, Form<PriceBookDraft> sent) {
        Form<PriceBookDraft> form = new DraftForm(sent, catalog).counted(id);
        List<Comparison> conflict = new ArrayList<>();
        return form.run(draft -> save(draft, conflict))
                ? Respond.to("/prices/" + id, "prices.saved")
                : Respond.again(
                        form.fields(),
                        page(id, form, conflict.stream().findFirst().orElse(null)));
    }

    private void save(PriceBookDraft draft, List<Comparison> conflict) {
        try {
            savePriceBook.save(draft, viewer.id());
        } catch (KernelRefusal.Stale stale) {
            View view = viewer.view();
            PriceList stored = ((PriceBookDraft) stale.theirs()).list();
            conflict.add(Comparison.of(stored, draft.list(), catalog, view)
                    .named(view.t("prices.conflict.stored"), view.t("prices.conflict.yours")));
            throw stale;
        }
    }

    @GET
    @Path("{id}/publish")
    @RolesAllowed(Roles.OWNER)
    @Transactional
    public PublishPage askToPublish(@PathParam("id") PriceBookId id) {
        return publishPage(id, Fields.empty());
    }

    @POST
    @Path("{id}/publish")
    @RolesAllowed(Roles.OWNER)
    public Response publish(@PathParam("id") PriceBookId id, Form<PublishPriceBook.Publish> form) {
        return form.labeled("prices").run(publishPriceBook::publish)
                ? Respond.to("/prices/" + id, "prices.published-done")
                : Respond.again(form.fields(), publishPage(id, form.fields()));
    }

    private PublishPage publishPage(PriceBookId id, Fields fields) {
        PriceBookView book = readPriceBooks.view(id);
        Comparison comparison = readPriceBooks
                .findInForce(book.list().from())
                .map(before -> Comparison.of(before.list(), book.list(), catalog, viewer.view()))
                .orElse(null);
        return new PublishPage(book, comparison, fields);
    }

    private Form<PriceBookDraft> showing(PriceBookDraft draft) {
        Fields fields = viewer.form(draft).fields();
        return Form.sent(
                PriceBookDraft.class,
                fields.completedBy(DraftForm.beside(draft.list().prices(), viewer.notation())));
    }

    private DraftPage page(PriceBookId id, Form<PriceBookDraft> form, @Nullable Comparison conflict) {
        return new DraftPage(id, new DraftForm(form, catalog), books.currency().getCode(), conflict);
    }
}
