package eaveside.web.books;

import eaveside.access.Sight;
import eaveside.ledger.Account;
import eaveside.ledger.Books;
import eaveside.ledger.PostJournal;
import eaveside.ledger.PostJournal.Journal;
import eaveside.ledger.ReadLedger;
import eaveside.web.forms.EditPage;
import eaveside.web.forms.Form;
import eaveside.web.forms.Options;
import eaveside.web.forms.PageResource;
import eaveside.web.forms.Respond;
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

/** Entering an expense or a journal entry. */
@Path("/books/journal")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Sees(Sight.BOOKS)
public class JournalPages extends PageResource {
    @Inject
    ReadLedger readLedger;

    @Inject
    PostJournal postJournal;

    @Inject
    Books books;

    @GET
    @Transactional
    public EditPage fresh() {
        return page(viewer.dated(Journal.class, Map.of("type", PostJournal.Type.EXPENSE.name())));
    }

    /** With the accounts that take journals. */
    private EditPage page(Form<Journal> form) {
        List<Account> accounts =
                readLedger.accounts().stream().filter(Account::takesJournals).toList();
        form.choosing("account", Options.of(accounts, Account::code, a -> a.code() + " " + a.name()));
        return EditPage.of(form, "books", "/books/journal").shownBy("books/journal.jte");
    }

    @POST
    public Response post(Form<Journal> form) {
        if (form.run(postJournal::post)) {
            return Respond.to("/documents/" + form.fields().typed("id"), "books.posted");
        }
        form.fields().moveError("account", "lines");
        return Respond.again(form.fields(), page(form));
    }
}
