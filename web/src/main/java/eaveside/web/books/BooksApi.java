package eaveside.web.books;

import eaveside.access.Role;
import eaveside.access.Sight;
import eaveside.kernel.DocumentId;
import eaveside.ledger.AccountCode;
import eaveside.ledger.Books;
import eaveside.ledger.ClosePeriod;
import eaveside.ledger.Entry;
import eaveside.ledger.PostJournal;
import eaveside.ledger.Posted;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument;
import eaveside.web.Json;
import eaveside.web.Json.Amount;
import eaveside.web.security.For;
import eaveside.web.security.Sees;
import eaveside.web.security.Trail;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
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
import java.time.DateTimeException;
import java.time.YearMonth;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The books for scripts. */
@Path("/api/books")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Sees(Sight.BOOKS)
@Tag(name = "Books")
public class BooksApi {
    private final ReadLedger readLedger;
    private final PostJournal postJournal;
    private final ClosePeriod closePeriod;
    private final Books books;
    private final Viewer viewer;
    private final Trail trail;

    @Inject
    public BooksApi(
            ReadLedger readLedger,
            PostJournal postJournal,
            ClosePeriod closePeriod,
            Books books,
            Viewer viewer,
            Trail trail) {
        this.readLedger = readLedger;
        this.postJournal = postJournal;
        this.closePeriod = closePeriod;
        this.books = books;
        this.viewer = viewer;
        this.trail = trail;
    }

    /** Debit above zero, credit below. */
    public record Balance(String account, String name, String kind, Amount balance) {}

    /** An entry; absent parts are null. */
    public record Line(
            int line,
            String account,
            String accountName,
            Amount amount,
            @Nullable String serviceLine,
            @Nullable String visit,
            @Nullable String customer,
            @Nullable String costKind,
            String note) {
        static Line of(ReadLedger.EntryLine e) {
            return new Line(
                    e.line(),
                    e.account().value(),
                    e.accountName(),
                    Amount.of(e.amount()),
                    text(e.serviceLine()),
                    text(e.visit()),
                    text(e.customer()),
                    text(e.costKind()),
                    e.note());
        }

        private static @Nullable String text(@Nullable Object value) {
            return value == null ? null : value.toString();
        }
    }

    /** A posted document. */
    public record Document(
            String id,
            String kind,
            long number,
            String postingDate,
            String serviceDate,
            String summary,
            @Nullable String reverses,
            @Nullable String reversedBy,
            List<Line> entries) {}

    /** What was posted. */
    public record Done(String id, String kind, long number, String postingDate) {
        static Done of(Posted posted) {
            return new Done(
                    posted.id().toString(),
                    posted.kind().name(),
                    posted.number(),
                    posted.postingDate().toString());
        }
    }

    /** @param amount debit above zero, credit below, in the company's currency */
    public record NewLine(
            @Nullable String account,
            @Nullable String amount,
            @Nullable String note) {}

    /** @param cost true for a cost document */
    public record NewJournal(
            @Nullable String id,
            boolean cost,
            @Nullable String date,
            @Nullable String summary,
            @Nullable List<NewLine> entries) {}

    /** @param id of the reversing document */
    public record NewReversal(@Nullable String id, @Nullable String reason) {}

    /** @param id of the closing document */
    public record NewClose(@Nullable String id) {}

    @GET
    @Path("trial-balance")
    @Transactional
    @Operation(summary = "Balances of all accounts over a span of days; their sum is zero")
    public List<Balance> trialBalance(
            @QueryParam("from") @Nullable String from, @QueryParam("to") @Nullable String to) {
        return readLedger.trialBalance(Json.date("from", from), Json.date("to", to)).stream()
                .map(b -> new Balance(b.code().value(), b.name(), b.kind().name(), Amount.of(b.amount())))
                .toList();
    }

    @GET
    @Path("documents/{id}")
    @Transactional
    @Operation(summary = "A posted document with its entries")
    public Document document(@PathParam("id") String id) {
        ReadLedger.DocumentView d = readLedger.document(DocumentId.of(id));
        return new Document(
                d.posted().id().toString(),
                d.posted().kind().name(),
                d.posted().number(),
                d.posted().postingDate().toString(),
                d.serviceDate().toString(),
                d.summary(),
                d.reverses() == null ? null : d.reverses().toString(),
                d.reversedBy() == null ? null : d.reversedBy().toString(),
                d.entries().stream().map(Line::of).toList());
    }

    @POST
    @Path("journals")
    @Operation(summary = "Posts a free journal or a cost document; the same again changes nothing")
    public Done post(@Nullable NewJournal body) {
        NewJournal journal = Json.required("body", body);
        List<Entry> entries = Json.required("entries", journal.entries()).stream()
                .map(line -> Entry.debit(
                                new AccountCode(Json.required("account", line.account())),
                                Json.money("amount", line.amount(), books.currency()))
                        .noted(line.note() == null ? "" : line.note()))
                .toList();
        Posted posted = postJournal.post(new PostJournal.Journal(
                DocumentId.of(Json.required("id", journal.id())),
                journal.cost(),
                Json.date("date", journal.date()),
                Json.required("summary", journal.summary()),
                entries,
                viewer.id()));
        trail.done("journal.post", posted.id());
        return Done.of(posted);
    }

    @POST
    @Path("documents/{id}/reversal")
    @Operation(summary = "Reverses a journal or cost document in full, once")
    public Done reverse(@PathParam("id") String id, @Nullable NewReversal body) {
        NewReversal reversal = Json.required("body", body);
        Posted posted = postJournal.reverse(new ReverseDocument.Reversal(
                DocumentId.of(Json.required("id", reversal.id())),
                DocumentId.of(id),
                books.today(),
                Json.required("reason", reversal.reason()),
                viewer.id()));
        trail.done("document.reverse", id);
        return Done.of(posted);
    }

    @POST
    @Path("months/{month}/close")
    @For(Role.OWNER)
    @Operation(summary = "Closes the oldest open month")
    public Done close(@PathParam("month") String month, @Nullable NewClose body) {
        Posted posted = closePeriod.close(new ClosePeriod.Close(
                DocumentId.of(Json.required("id", Json.required("body", body).id())), month(month), viewer.id()));
        trail.done("month.close", month);
        return Done.of(posted);
    }

    private static YearMonth month(String text) {
        try {
            return YearMonth.parse(text);
        } catch (DateTimeException e) {
            throw new WebRefusal.NoSuchPage();
        }
    }
}
