package eaveside.web.books;

import eaveside.access.Role;
import eaveside.access.Sight;
import eaveside.ledger.Account;
import eaveside.ledger.AccountType;
import eaveside.ledger.AddAccount;
import eaveside.ledger.NewAccount;
import eaveside.ledger.ReadLedger;
import eaveside.web.View;
import eaveside.web.forms.EditPage;
import eaveside.web.forms.Form;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.forms.Options;
import eaveside.web.security.Roles;
import eaveside.web.security.Sees;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;

/** The chart of accounts, to which the owner adds accounts for expenses and journal entries. */
@Path("/books/accounts")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Sees(Sight.BOOKS)
public class AccountPages extends ListResource<Account> {
    /** Memorandum accounts lie outside of profit and balance; nothing that is entered by hand belongs there. */
    private static final List<AccountType> ADDABLE = List.of(
            AccountType.EXPENSE, AccountType.REVENUE, AccountType.ASSET, AccountType.LIABILITY, AccountType.EQUITY);

    @Inject
    ReadLedger readLedger;

    @Inject
    AddAccount addAccount;

    @Override
    protected Listing<Account> list() {
        View view = viewer.view();
        Listing<Account> list = Listing.<Account>whole(
                        "books.accounts",
                        "/books/accounts",
                        query -> readLedger.accounts().stream()
                                .filter(account -> query.finds(account.code().value(), account.name()))
                                .toList())
                .within("books.title", "/books")
                .about("intro")
                .searched()
                .opening("code", account -> "/books/entries?account=" + account.code())
                .columns("name", "type")
                .column("takes", account -> view.t("books.accounts.takes." + account.takesJournals()));
        return view.is(Role.OWNER) ? list.action("new", "/books/accounts/new") : list;
    }

    @GET
    @Path("new")
    @RolesAllowed(Roles.OWNER)
    @Transactional
    public EditPage fresh() {
        return page(viewer.form(NewAccount.class, Map.of("type", AccountType.EXPENSE.name())));
    }

    @POST
    @RolesAllowed(Roles.OWNER)
    public Response add(Form<NewAccount> form) {
        return page(form).saved(form.run(account -> addAccount.add(account, viewer.id())));
    }

    private EditPage page(Form<NewAccount> form) {
        View view = viewer.view();
        form.choosing("type", Options.of(ADDABLE, AccountType::name, type -> view.t("books.accounts.type", type)));
        return EditPage.of(form, "books.accounts", "/books/accounts");
    }
}
