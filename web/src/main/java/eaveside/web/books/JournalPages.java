package eaveside.web.books;

import eaveside.access.Sight;
import eaveside.kernel.DocumentId;
import eaveside.ledger.Account;
import eaveside.ledger.Books;
import eaveside.ledger.PostJournal;
import eaveside.ledger.PostJournal.Journal;
import eaveside.ledger.ReadLedger;
import eaveside.web.Page;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
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
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** Entering an expense or a journal entry. */
@Path("/books/journal")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Sees(Sight.BOOKS)
public class JournalPages {
    private static final int ROWS = 4;

    @Inject
    ReadLedger readLedger;

    @Inject
    PostJournal postJournal;

    @Inject
    Books books;

    @Inject
    Viewer viewer;

    /**
     * The form.
     *
     * @param  rows     the numbers of the rows
     * @param  accounts those that take journals, by code
     */
    public record JournalPage(Form<Journal> form, List<Integer> rows, Map<String, String> accounts) implements Page {
        @Override
        public String template() {
            return "books/journal.jte";
        }
    }

    @GET
    @Transactional
    public JournalPage form() {
        return page(viewer.form(
                Journal.class,
                Map.of(
                        "id",
                        DocumentId.next().toString(),
                        "type",
                        PostJournal.Type.EXPENSE.name(),
                        "date",
                        books.today().toString())));
    }

    private JournalPage page(Form<Journal> form) {
        Map<String, String> accounts = new LinkedHashMap<>();
        readLedger.accounts().stream()
                .filter(Account::takesJournals)
                .forEach(account -> accounts.put(account.code().value(), account.code() + " " + account.name()));
        List<Integer> rows = form.fields().rows("line");
        return new JournalPage(
                form.labeled("books"),
                rows.isEmpty() ? IntStream.range(0, ROWS).boxed().toList() : rows,
                accounts);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response post(Form<Journal> form) {
        if (form.run(postJournal::post)) {
            return Respond.to("/documents/" + form.fields().typed("id"), "books.posted");
        }
        form.fields().moveError("account", "lines");
        return Respond.again(form.fields(), page(form));
    }
}
