package eaveside.web.books;

import eaveside.access.Sight;
import eaveside.kernel.DocumentId;
import eaveside.ledger.Account;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AddAccount;
import eaveside.ledger.Books;
import eaveside.ledger.ClosePeriod;
import eaveside.ledger.ClosePeriod.Close;
import eaveside.ledger.DocumentView;
import eaveside.ledger.NewAccount;
import eaveside.ledger.PostJournal;
import eaveside.ledger.PostJournal.Journal;
import eaveside.ledger.Posted;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.ledger.TrialBalance;
import eaveside.web.forms.Created;
import eaveside.web.forms.JsonResource;
import eaveside.web.forms.Span;
import eaveside.web.security.Roles;
import eaveside.web.security.Sees;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The books and their accounts for scripts. Amounts of entries and balances are debits above zero, credits below. */
@Path("/api/books")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Sees(Sight.BOOKS)
@Tag(name = "Books")
public class BooksApi extends JsonResource {
    @Inject
    ReadLedger readLedger;

    @Inject
    MonthEnd monthEnd;

    @Inject
    PostJournal postJournal;

    @Inject
    ClosePeriod closePeriod;

    @Inject
    AddAccount addAccount;

    @Inject
    Books books;

    /** The chart, by code. */
    public record Accounts(List<Account> accounts) {}

    @GET
    @Path("accounts")
    @Operation(summary = "The chart of accounts, by number")
    public Accounts accounts() {
        return new Accounts(readLedger.accounts());
    }

    @GET
    @Path("accounts/{code: [0-9]{4}}")
    @Operation(summary = "An account")
    public Account account(@PathParam("code") String code) {
        return readLedger.account(new AccountCode(code));
    }

    @POST
    @Path("accounts")
    @RolesAllowed(Roles.OWNER)
    @Operation(summary = "Adds an account for expenses and journal entries; the same again changes nothing")
    public Created<Account> addAccount(NewAccount account) {
        Account added = addAccount.add(account, viewer.id());
        return Created.at("/api/books/accounts/" + added.code(), added);
    }

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
        return monthEnd.month(BooksPages.parsed(month));
    }

    @POST
    @Path("months/{month}/close")
    @RolesAllowed(Roles.OWNER)
    @Operation(summary = "Closes the oldest open month for good; read the month first for what is still open of it")
    public Created<Posted> close(Close close) {
        return Created.document(closePeriod.close(close));
    }

    @GET
    @Path("documents/{id}")
    @Operation(summary = "A posted document with its entries")
    public DocumentView document(@PathParam("id") DocumentId id) {
        return readLedger.document(id);
    }

    @POST
    @Path("journals")
    @Operation(summary = "Posts an expense or a journal entry; the same again changes nothing")
    public Created<Posted> post(Journal journal) {
        return Created.document(postJournal.post(journal));
    }

    @POST
    @Path("documents/{original}/reversal")
    @Operation(summary = "Reverses an expense or a journal entry in full, once")
    public Created<Posted> reverse(Reversal reversal) {
        return Created.document(postJournal.reverse(reversal));
    }
}
