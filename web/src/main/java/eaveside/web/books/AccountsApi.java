package eaveside.web.books;

import eaveside.access.Role;
import eaveside.access.Sight;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountType;
import eaveside.ledger.AddAccount;
import eaveside.ledger.ReadLedger;
import eaveside.web.Json;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Sees;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The chart of accounts for scripts. */
@Path("/api/books/accounts")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Sees(Sight.BOOKS)
@Tag(name = "Books")
public class AccountsApi {
    private final ReadLedger readLedger;
    private final AddAccount addAccount;
    private final AuditLog auditLog;

    @Inject
    public AccountsApi(ReadLedger readLedger, AddAccount addAccount, AuditLog auditLog) {
        this.readLedger = readLedger;
        this.addAccount = addAccount;
        this.auditLog = auditLog;
    }

    /** @param  takesJournals whether costs and journals may stand there; documents post to the others by themselves */
    public record Account(String code, String name, String type, boolean takesJournals) {}

    /** @param  type EXPENSE, REVENUE, ASSET, LIABILITY or EQUITY */
    public record NewAccount(
            @Nullable String code,
            @Nullable String name,
            @Nullable String type) {}

    @GET
    @Transactional
    @Operation(summary = "The chart of accounts, by number")
    public List<Account> accounts() {
        return readLedger.accounts().stream()
                .map(a -> new Account(a.code().value(), a.name(), a.type().name(), a.takesJournals()))
                .toList();
    }

    @POST
    @For(Role.OWNER)
    @Operation(summary = "Adds an account for costs and journals")
    public List<Account> add(@Nullable NewAccount body) {
        NewAccount asked = Json.required("body", body);
        AccountCode code = new AccountCode(Json.required("code", asked.code()));
        addAccount.add(code, Json.required("name", asked.name()), Json.choice("type", AccountType.class, asked.type()));
        auditLog.done("account.add", code);
        return accounts().stream()
                .filter(account -> account.code().equals(code.value()))
                .toList();
    }
}
