package eaveside.web.prices;

import eaveside.catalog.Catalog;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Records;
import eaveside.ledger.Books;
import eaveside.pricing.PriceBookDraft;
import eaveside.pricing.PriceBookView;
import eaveside.pricing.PriceList;
import eaveside.pricing.PublishPriceBook;
import eaveside.pricing.ReadPriceBooks;
import eaveside.pricing.SavePriceBook;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Writing a draft, and publishing it; the owner's alone. */
@Path("/prices")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed(Roles.OWNER)
public class PriceDraftPages {
    @Inject
    SavePriceBook savePriceBook;

    @Inject
    PublishPriceBook publishPriceBook;

    @Inject
    ReadPriceBooks readPriceBooks;

    @Inject
    Catalog catalog;

    @Inject
    Books books;

    @Inject
    Viewer viewer;

    /**
     * The form.
     *
     * @param  conflict what is stored now (before) and what was typed (after), where another user saved first
     */
    public record DraftPage(
            PriceBookId id,
            DraftForm draft,
            String currency,
            @Nullable Comparison conflict) implements Page {
        @Override
        public String template() {
            return "prices/draft.jte";
        }
    }

    /** The question before publishing, with what it would change. */
    public record PublishPage(
            PriceBookView book,
            @Nullable String inForce,
            @Nullable Comparison comparison,
            Fields fields) implements Page {
        @Override
        public String template() {
            return "prices/publish.jte";
        }
    }

    /** @param from the book to copy */
    @GET
    @Path("new")
    @Transactional
    public DraftPage fresh(@QueryParam("from") @Nullable PriceBookId from) {
        // Without any book nothing can be quoted yet: the first one is wanted at once.
        LocalDate today = books.today();
        LocalDate begins =
                readPriceBooks.isAnyPublished() ? today.withDayOfMonth(1).plusMonths(1) : today;
        PriceBookId id = PriceBookId.next();
        if (from == null) {
            return page(
                    id,
                    viewer.form(
                            PriceBookDraft.class,
                            Map.of("visitMinimum", "0", "sharedReduction", "0", "from", begins.toString())));
        }
        PriceList list = readPriceBooks.view(from).list();
        String name = viewer.view().t("prices.copy-of", list.name());
        return page(
                id,
                showing(new PriceBookDraft(
                        id,
                        Records.with(
                                Records.with(list, "from", begins),
                                "name",
                                name.substring(0, Math.min(100, name.length()))),
                        0)));
    }

    @GET
    @Path("{id}/edit")
    @Transactional
    public Response edit(@PathParam("id") PriceBookId id) {
        PriceBookView book = readPriceBooks.view(id);
        return book.isDraft()
                ? Response.ok(page(id, showing(new PriceBookDraft(id, book.list(), book.version()))))
                        .build()
                : Response.seeOther(URI.create("/prices/" + id)).build();
    }

    @POST
    @Path("{id}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
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
            PriceList stored = ((PriceBookDraft) stale.theirs()).list();
            conflict.add(Comparison.of(stored, draft.list(), catalog, viewer.view()));
            throw stale;
        }
    }

    @GET
    @Path("{id}/publish")
    @Transactional
    public PublishPage askToPublish(@PathParam("id") PriceBookId id) {
        return publishPage(id, Fields.empty());
    }

    @POST
    @Path("{id}/publish")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response publish(@PathParam("id") PriceBookId id, Form<PublishPriceBook.Publish> form) {
        return form.run(publishPriceBook::publish)
                ? Respond.to("/prices/" + id, "prices.published-done")
                : Respond.again(form.fields(), publishPage(id, form.fields()));
    }

    private PublishPage publishPage(PriceBookId id, Fields fields) {
        PriceBookView book = readPriceBooks.view(id);
        PriceList before = readPriceBooks
                .findInForce(book.list().from())
                .map(inForce -> inForce.list())
                .orElse(null);
        return new PublishPage(
                book,
                before == null ? null : before.name(),
                before == null ? null : Comparison.of(before, book.list(), catalog, viewer.view()),
                fields);
    }

    private Form<PriceBookDraft> showing(PriceBookDraft draft) {
        Fields fields = viewer.form(draft).fields();
        return Form.sent(
                PriceBookDraft.class,
                fields.completedBy(DraftForm.beside(draft.list().prices(), viewer.notation())));
    }

    private DraftPage page(PriceBookId id, Form<PriceBookDraft> form) {
        return page(id, form, null);
    }

    private DraftPage page(PriceBookId id, Form<PriceBookDraft> form, @Nullable Comparison conflict) {
        return new DraftPage(id, new DraftForm(form, catalog), books.currency().getCode(), conflict);
    }
}
