package eaveside.web.books;

import eaveside.access.Role;
import eaveside.access.Sight;
import eaveside.kernel.DocumentId;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountingPeriod;
import eaveside.ledger.Books;
import eaveside.ledger.ClosePeriod;
import eaveside.ledger.DocumentView;
import eaveside.ledger.Entry;
import eaveside.ledger.EntryLine;
import eaveside.ledger.PostJournal;
import eaveside.ledger.Posted;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReadVariances;
import eaveside.ledger.ReverseDocument;
import eaveside.ledger.TrialBalance;
import eaveside.web.Json;
import eaveside.web.Json.Amount;
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
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.Instant;
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
    private final ReadVariances readVariances;
    private final MonthEnd monthEnd;
    private final PostJournal postJournal;
    private final ClosePeriod closePeriod;
    private final Books books;
    private final Viewer viewer;

    @Inject
    public BooksApi(
            ReadLedger readLedger,
            ReadVariances readVariances,
            MonthEnd monthEnd,
            PostJournal postJournal,
            ClosePeriod closePeriod,
            Books books,
            Viewer viewer) {
        this.readLedger = readLedger;
        this.readVariances = readVariances;
        this.monthEnd = monthEnd;
        this.postJournal = postJournal;
        this.closePeriod = closePeriod;
        this.books = books;
        this.viewer = viewer;
    }

    /** An account: debit above zero, credit below; opening and change make the closing. */
    public record Balance(String account, String name, String type, Amount opening, Amount change, Amount closing) {
        static Balance of(TrialBalance.Row row) {
            return new Balance(
                    row.code().value(),
                    row.name(),
                    row.type().name(),
                    Amount.of(row.opening()),
                    Amount.of(row.change()),
                    Amount.of(row.closing()));
        }
    }

    /** The sums of the debit and of the credit balances, both above zero; they are equal. */
    public record Sides(Amount debit, Amount credit) {
        static Sides of(TrialBalance.Sides sides) {
            return new Sides(Amount.of(sides.debit()), Amount.of(sides.credit()));
        }
    }

    /** Every account with entries until the last day, by number. */
    public record Balances(
            String from, String to, List<Balance> accounts, Sides opening, Sides change, Sides closing) {}

    /** What was spent and what was absorbed into services; the variance is the difference. */
    public record Variance(String account, String name, Amount actual, Amount applied, Amount variance) {
        static Variance of(ReadVariances.Variance variance) {
            return new Variance(
                    variance.account().value(),
                    variance.name(),
                    Amount.of(variance.actual()),
                    Amount.of(variance.applied()),
                    Amount.of(variance.amount()));
        }
    }

    /** What is not finished of a month; counts and amounts as of its last day. */
    public record Unfinished(
            long visitsToSignOff,
            long visitsToDecide,
            long visitsToBill,
            long invoiceDrafts,
            Amount invoiceDraftsTotal,
            Amount goodsNotInvoiced,
            long physicalCounts) {
        static Unfinished of(StillOpen open) {
            return new Unfinished(
                    open.toSignOff(),
                    open.toDecide(),
                    open.toBill(),
                    open.drafts(),
                    Amount.of(open.draftsTotal()),
                    Amount.of(open.goodsNotInvoiced()),
                    open.counts());
        }
    }

    /**
     * A month of the books.
     *
     * @param  closedAt  null while it is open
     * @param  closable  whether it is over, and the oldest that is open
     * @param  stillOpen what closing it leaves for later months
     */
    public record Month(
            String month,
            @Nullable String closedAt,
            boolean closable,
            List<Variance> variances,
            Unfinished stillOpen) {}

    /** An entry; absent parts are null. */
    public record Line(
            int line,
            String account,
            String accountName,
            Amount amount,
            @Nullable String serviceLine,
            @Nullable String visit,
            @Nullable String customer,
            @Nullable String costType,
            String note) {
        static Line of(EntryLine e) {
            return new Line(
                    e.line(),
                    e.account().value(),
                    e.accountName(),
                    Amount.of(e.amount()),
                    text(e.serviceLine()),
                    text(e.visit()),
                    text(e.customer()),
                    text(e.costType()),
                    e.note());
        }

        private static @Nullable String text(@Nullable Object value) {
            return value == null ? null : value.toString();
        }
    }

    /** A posted document. */
    public record Document(
            String id,
            String type,
            long number,
            String postingDate,
            String serviceDate,
            String summary,
            @Nullable String reverses,
            @Nullable String reversedBy,
            List<Line> entries) {}

    /** What was posted. */
    public record Done(String id, String type, long number, String postingDate) {
        static Done of(Posted posted) {
            return new Done(
                    posted.id().toString(),
                    posted.type().name(),
                    posted.number(),
                    posted.postingDate().toString());
        }
    }

    /** @param  amount debit above zero, credit below, in the company's currency */
    public record NewLine(
            @Nullable String account,
            @Nullable String amount,
            @Nullable String note) {}

    /** @param  cost true for a cost document */
    public record NewJournal(
            @Nullable String id,
            boolean cost,
            @Nullable String date,
            @Nullable String summary,
            @Nullable List<NewLine> entries) {}

    /** @param  id of the reversing document */
    public record NewReversal(@Nullable String id, @Nullable String reason) {}

    /** @param  id of the closing document */
    public record NewClose(@Nullable String id) {}

    @GET
    @Path("trial-balance")
    @Transactional
    @Operation(summary = "Opening, change and closing of every account; each column's debits and credits are equal")
    public Balances trialBalance(@QueryParam("from") @Nullable String from, @QueryParam("to") @Nullable String to) {
        TrialBalance balance = readLedger.trialBalance(Json.date("from", from), Json.date("to", to));
        return new Balances(
                balance.from().toString(),
                balance.to().toString(),
                balance.accounts().stream().map(Balance::of).toList(),
                Sides.of(balance.openings()),
                Sides.of(balance.changes()),
                Sides.of(balance.closings()));
    }

    @GET
    @Path("months/{month}")
    @Transactional
    @Operation(summary = "A month: its variances, and what is still open of it; to be read before it is closed")
    public Month month(@PathParam("month") String text) {
        YearMonth month = MonthResource.parsed(text);
        AccountingPeriod period = readLedger.period(month);
        Instant closedAt = period.closedAt();
        return new Month(
                month.toString(),
                closedAt == null ? null : closedAt.toString(),
                closedAt == null
                        && month.equals(readLedger.oldestOpen())
                        && month.atEndOfMonth().isBefore(books.today()),
                readVariances.between(month.atDay(1), month.atEndOfMonth()).stream()
                        .map(Variance::of)
                        .toList(),
                Unfinished.of(monthEnd.stillOpen(month)));
    }

    @GET
    @Path("documents/{id}")
    @Transactional
    @Operation(summary = "A posted document with its entries")
    public Document document(@PathParam("id") String id) {
        DocumentView d = readLedger.document(DocumentId.of(id));
        return new Document(
                d.posted().id().toString(),
                d.posted().type().name(),
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
                null,
                Json.required("reason", reversal.reason()),
                viewer.id()));
        return Done.of(posted);
    }

    @POST
    @Path("months/{month}/close")
    @For(Role.OWNER)
    @Operation(summary = "Closes the oldest open month for good; read the month first for what is still open of it")
    public Done close(@PathParam("month") String month, @Nullable NewClose body) {
        Posted posted = closePeriod.close(new ClosePeriod.Close(
                DocumentId.of(Json.required("id", Json.required("body", body).id())),
                MonthResource.parsed(month),
                viewer.id()));
        return Done.of(posted);
    }
}
