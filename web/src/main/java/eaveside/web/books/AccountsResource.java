package eaveside.web.books;

import eaveside.access.Role;
import eaveside.access.Sight;
import eaveside.ledger.Account;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountType;
import eaveside.ledger.AddAccount;
import eaveside.ledger.ReadLedger;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Sees;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The chart of accounts, to which the owner adds accounts for journals. */
@Path("/books/accounts")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
@Sees(Sight.BOOKS)
public class AccountsResource {
    private static final List<AccountType> ADDABLE = List.of(
            AccountType.EXPENSE, AccountType.REVENUE, AccountType.ASSET, AccountType.LIABILITY, AccountType.EQUITY);

    private final ReadLedger readLedger;
    private final AddAccount addAccount;
    private final AuditLog auditLog;
    private final Viewer viewer;

    @Inject
    public AccountsResource(ReadLedger readLedger, AddAccount addAccount, AuditLog auditLog, Viewer viewer) {
        this.viewer = viewer;
        this.readLedger = readLedger;
        this.addAccount = addAccount;
        this.auditLog = auditLog;
    }

    /** The accounts by code, and the form for another. */
    public record AccountsPage(List<Account> accounts, Fields fields) implements Page {
        @Override
        public String template() {
            return "books/accounts.jte";
        }

        public Map<String, String> types(View view) {
            Map<String, String> types = new LinkedHashMap<>();
            ADDABLE.forEach(type -> types.put(type.name(), view.t("books.type", type)));
            return types;
        }
    }

    @GET
    @Transactional
    public AccountsPage accounts() {
        return new AccountsPage(readLedger.accounts(), Fields.empty());
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @For(Role.OWNER)
    public Response add(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        String code = fields.text("code");
        String name = fields.text("name");
        AccountType type = fields.choice("type", AccountType.class);
        boolean added =
                fields.run(() -> addAccount.add(new AccountCode(code), name, type == null ? ADDABLE.getFirst() : type));
        if (!added) {
            return Response.status(fields.status())
                    .entity(new AccountsPage(readLedger.accounts(), fields))
                    .build();
        }
        auditLog.done("account.add", code);
        return Response.seeOther(URI.create("/books/accounts?done=books.account-added"))
                .build();
    }
}
