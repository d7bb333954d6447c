package eaveside.web.prices;

import eaveside.kernel.PriceBookId;
import eaveside.kernel.Slice;
import eaveside.ledger.Books;
import eaveside.pricing.PriceBookDraft;
import eaveside.pricing.PriceBookSummary;
import eaveside.pricing.PriceBookView;
import eaveside.pricing.PublishPriceBook;
import eaveside.pricing.ReadPriceBooks;
import eaveside.pricing.SavePriceBook;
import eaveside.web.forms.JsonResource;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Price books for scripts, all prices net of tax; writing them is the owner's alone. */
@Path("/api/price-books")
@Dependent
@Tag(name = "Prices")
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class PriceBooksApi extends JsonResource {
    private static final int PAGE = 50;

    @Inject
    ReadPriceBooks readPriceBooks;

    @Inject
    SavePriceBook savePriceBook;

    @Inject
    PublishPriceBook publishPriceBook;

    @Inject
    Books books;

    /** A page of the list; ask for more with {@code after=next}. */
    public record Listed(
            List<PriceBookSummary> priceBooks, @Nullable String next) {}

    @GET
    @Operation(summary = "Lists the drafts, then the published price books, the newest first")
    public Listed list(@QueryParam("after") @Nullable String after) {
        Slice<PriceBookSummary> page = readPriceBooks.list(after, PAGE);
        return new Listed(page.rows(), page.next());
    }

    @GET
    @Path("in-force")
    @Transactional
    @Operation(summary = "Reads the price book in force on a date, today where none is named")
    public PriceBookView inForce(@QueryParam("date") @Nullable LocalDate date) {
        return readPriceBooks.view(
                readPriceBooks.inForce(date == null ? books.today() : date).id());
    }

    @GET
    @Path("{id}")
    @Operation(summary = "Reads a price book, published or a draft")
    public PriceBookView book(@PathParam("id") PriceBookId id) {
        return readPriceBooks.view(id);
    }

    @PUT
    @Path("{id}")
    @RolesAllowed(Roles.OWNER)
    @Operation(summary = "Begins a draft, or changes the version named; the same again changes nothing")
    public PriceBookView save(PriceBookDraft draft) {
        return readPriceBooks.view(savePriceBook.save(draft, viewer.id()).id());
    }

    @POST
    @Path("{id}/publish")
    @RolesAllowed(Roles.OWNER)
    @Operation(
            summary = "Publishes the version of a draft that is named; the same again changes nothing",
            description = "From its first day on work is priced from the book, and it never changes again.")
    public PriceBookView publish(PublishPriceBook.Publish publish) {
        return readPriceBooks.view(publishPriceBook.publish(publish).id());
    }
}
