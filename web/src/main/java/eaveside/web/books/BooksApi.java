package eaveside.web.books;

import eaveside.access.Sight;
import eaveside.kernel.DocumentId;
import eaveside.ledger.Books;
import eaveside.ledger.ClosePeriod;
import eaveside.ledger.ClosePeriod.Close;
import eaveside.ledger.DocumentView;
import eaveside.ledger.PostJournal;
import eaveside.ledger.PostJournal.Journal;
import eaveside.ledger.Posted;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.ledger.TrialBalance;
import eaveside.web.forms.Created;
import eaveside.web.forms.Span;
import eaveside.web.security.Roles;
import eaveside.web.security.Sees;
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
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The books for scripts. Amounts of entries and balances are debits above zero and credits below. */
@Path("/api/books")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Sees(Sight.BOOKS)
@Tag(name = "Books")
public class BooksApi {
    @Inject
    ReadLedger readLedger;

    @Inject
    MonthEnd monthEnd;

    @Inject
    PostJournal postJournal;

    @Inject
    ClosePeriod closePeriod;

    @Inject
    Books books;

    @GET
    @Path("trial-balance")
    @Transactional
    @Operation(
            summary = "Opening, change and closing of every account; each column's debits and credits are equal",
            description = "From the first of the month until today, where no days are named.")
    public TrialBalance trialBalance(
            @QueryParam("from") @Nullable LocalDate from, @QueryParam("to") @Nullable LocalDate to) {
        Span span = Span.of(from, to, books.today());
        return readLedger.trialBalance(span.from(), span.to());
    }

    @GET
    @Path("months/{month}")
    @Transactional
    @Operation(summary = "A month: its variances, and what is still open of it; to be read before it is closed")
    public Month month(@PathParam("month") String month) {
        return monthEnd.month(MonthPages.parsed(month));
    }

    @POST
    @Path("months/{month}/close")
    @RolesAllowed(Roles.OWNER)
    @Operation(summary = "Closes the oldest open month for good; read the month first for what is still open of it")
    public Created<Posted> close(Close close) {
        return created(closePeriod.close(close));
    }

    @GET
    @Path("documents/{id}")
    @Transactional
    @Operation(summary = "A posted document with its entries")
    public DocumentView document(@PathParam("id") DocumentId id) {
        return readLedger.document(id);
    }

    @POST
    @Path("journals")
    @Operation(summary = "Posts an expense or a journal entry; the same again changes nothing")
    public Created<Posted> post(Journal journal) {
        return created(postJournal.post(journal));
    }

    @POST
    @Path("documents/{original}/reversal")
    @Operation(summary = "Reverses an expense or a journal entry in full, once")
    public Created<Posted> reverse(Reversal reversal) {
        return created(postJournal.reverse(reversal));
    }

    private static Created<Posted> created(Posted posted) {
        return Created.document(posted);
    }
}
