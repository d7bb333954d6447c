package eaveside.web.books;

import eaveside.access.Role;
import eaveside.access.Sight;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Ids;
import eaveside.kernel.Money;
import eaveside.ledger.Account;
import eaveside.ledger.AccountCode;
import eaveside.ledger.Books;
import eaveside.ledger.Entry;
import eaveside.ledger.PostJournal;
import eaveside.ledger.ReadLedger;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
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
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** Entering a cost document or a free journal. */
@Path("/books/journal")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
@Sees(Sight.BOOKS)
public class JournalResource {
    private static final int ROWS = 4;

    private final ReadLedger readLedger;
    private final PostJournal postJournal;
    private final Books books;
    private final Viewer viewer;

    @Inject
    public JournalResource(ReadLedger readLedger, PostJournal postJournal, Books books, Viewer viewer) {
        this.readLedger = readLedger;
        this.postJournal = postJournal;
        this.books = books;
        this.viewer = viewer;
    }

    /** The form, with the accounts that take journals. */
    public record JournalPage(Fields fields, List<Integer> rows, Map<String, String> accounts) implements Page {
        @Override
        public String template() {
            return "books/journal.jte";
        }
    }

    @GET
    @Transactional
    public JournalPage form() {
        return page(Fields.showing(Map.of(
                "id",
                Ids.next().toString(),
                "type",
                "EXPENSE",
                "date",
                books.today().toString())));
    }

    private JournalPage page(Fields fields) {
        Map<String, String> accounts = new LinkedHashMap<>();
        readLedger.accounts().stream()
                .filter(Account::takesJournals)
                .forEach(a -> accounts.put(a.code().value(), a.code() + " " + a.name()));
        List<Integer> rows = fields.rows("line");
        return new JournalPage(
                fields, rows.isEmpty() ? IntStream.range(0, ROWS).boxed().toList() : rows, accounts);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response post(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        DocumentId id = new DocumentId(fields.id("id"));
        LocalDate date = fields.date("date", books.today());
        String summary = fields.text("summary");
        boolean cost = fields.typed("type").equals("EXPENSE");
        List<Entry> entries = entries(fields);
        boolean posted = fields.run(
                () -> postJournal.post(new PostJournal.Journal(id, cost, date, summary, entries, viewer.id())));
        return posted
                ? Response.seeOther(URI.create("/documents/" + id + "?done=books.posted"))
                        .build()
                : Response.status(fields.status()).entity(page(fields)).build();
    }

    private List<Entry> entries(Fields fields) {
        List<Entry> entries = new ArrayList<>();
        for (int row : fields.rows("line")) {
            String prefix = "line-" + row + "-";
            boolean debit = !fields.typed(prefix + "debit").isBlank();
            boolean credit = !fields.typed(prefix + "credit").isBlank();
            if (!debit && !credit) {
                if (!fields.typed(prefix + "account").isBlank()
                        || !fields.typed(prefix + "note").isBlank()) {
                    fields.wrong(prefix + "debit", "forms.missing");
                }
                continue;
            }
            if (debit && credit) {
                fields.wrong(prefix + "credit", "books.one-side");
                continue;
            }
            String side = prefix + (debit ? "debit" : "credit");
            Money amount = fields.money(side, books.currency());
            Entry entry = fields.made(prefix + "account", () -> {
                AccountCode account = new AccountCode(fields.text(prefix + "account"));
                return debit ? Entry.debit(account, amount) : Entry.credit(account, amount);
            });
            if (entry != null) {
                entries.add(entry.noted(fields.optional(prefix + "note")));
            }
        }
        return entries;
    }
}
