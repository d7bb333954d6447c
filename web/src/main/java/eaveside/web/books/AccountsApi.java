package eaveside.web.books;

import eaveside.access.Sight;
import eaveside.ledger.Account;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AddAccount;
import eaveside.ledger.NewAccount;
import eaveside.ledger.ReadLedger;
import eaveside.web.forms.Created;
import eaveside.web.security.Roles;
import eaveside.web.security.Sees;
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
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The chart of accounts for scripts. */
@Path("/api/books/accounts")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Sees(Sight.BOOKS)
@Tag(name = "Books")
public class AccountsApi {
    @Inject
    ReadLedger readLedger;

    @Inject
    AddAccount addAccount;

    @Inject
    Viewer viewer;

    /** All of them, by code. */
    public record Accounts(List<Account> accounts) {}

    @GET
    @Transactional
    @Operation(summary = "The chart of accounts, by number")
    public Accounts accounts() {
        return new Accounts(readLedger.accounts());
    }

    @GET
    @Path("{code: [0-9]{4}}")
    @Transactional
    @Operation(summary = "An account")
    public Account account(@PathParam("code") String code) {
        return readLedger.account(new AccountCode(code));
    }

    @POST
    @RolesAllowed(Roles.OWNER)
    @Operation(summary = "Adds an account for expenses and journal entries; the same again changes nothing")
    public Created<Account> add(NewAccount account) {
        Account added = addAccount.add(account, viewer.id());
        return Created.at("/api/books/accounts/" + added.code(), added);
    }
}
