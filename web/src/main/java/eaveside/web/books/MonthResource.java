package eaveside.web.books;

import eaveside.access.Role;
import eaveside.access.Sight;
import eaveside.kernel.DocumentId;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRole;
import eaveside.ledger.AccountingPeriod;
import eaveside.ledger.Books;
import eaveside.ledger.ClosePeriod;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReadVariances;
import eaveside.ledger.ReadVariances.Variance;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Sees;
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
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.YearMonth;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A month of the books: its variances, what is still open of it, and its close. */
@Path("/books")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
@Sees(Sight.BOOKS)
public class MonthResource {
    private final ReadLedger readLedger;
    private final ReadVariances readVariances;
    private final MonthEnd monthEnd;
    private final ClosePeriod closePeriod;
    private final Books books;
    private final Viewer viewer;

    @Inject
    public MonthResource(
            ReadLedger readLedger,
            ReadVariances readVariances,
            MonthEnd monthEnd,
            ClosePeriod closePeriod,
            Books books,
            Viewer viewer) {
        this.readLedger = readLedger;
        this.readVariances = readVariances;
        this.monthEnd = monthEnd;
        this.closePeriod = closePeriod;
        this.books = books;
        this.viewer = viewer;
    }

    /**
     * One month.
     *
     * @param  oldestOpen the month that closes next
     * @param  ended      whether the month is over
     */
    public record MonthPage(
            YearMonth month,
            @Nullable Instant closedAt,
            YearMonth oldestOpen,
            boolean ended,
            List<Variance> variances,
            StillOpen stillOpen,
            AccountCode goodsAccount,
            DocumentId closeId,
            Fields fields)
            implements Page {
        @Override
        public String template() {
            return "books/month.jte";
        }

        public boolean isClosable() {
            return closedAt == null && ended && month.equals(oldestOpen);
        }

        /** The entries of the accounts in the month. */
        public String entries(List<AccountCode> accounts) {
            return "/books/entries?"
                    + accounts.stream().map(code -> "account=" + code + "&").collect(Collectors.joining())
                    + "from=" + month.atDay(1) + "&to=" + month.atEndOfMonth();
        }

        /** The entries behind a variance: of what was spent and of what was applied. */
        public String entries(Variance variance) {
            return entries(Stream.concat(variance.actualCodes().stream(), variance.appliedCodes().stream())
                    .toList());
        }
    }

    @GET
    @Path("months/{month}")
    @Transactional
    public MonthPage month(@PathParam("month") String month) {
        return page(parsed(month), Fields.empty());
    }

    private MonthPage page(YearMonth month, Fields fields) {
        AccountingPeriod period = readLedger.period(month);
        return new MonthPage(
                month,
                period.closedAt(),
                readLedger.oldestOpen(),
                month.atEndOfMonth().isBefore(books.today()),
                readVariances.between(month.atDay(1), month.atEndOfMonth()),
                monthEnd.stillOpen(month),
                Objects.requireNonNull(readLedger.accountsInRoles().get(AccountRole.GOODS_NOT_INVOICED)),
                DocumentId.next(),
                fields);
    }

    @POST
    @Path("close")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @For(Role.OWNER)
    public Response close(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        YearMonth month = fields.month("month", YearMonth.from(books.today()));
        DocumentId id = new DocumentId(fields.id("id"));
        if (!fields.ticked("confirm")) {
            fields.wrong("confirm", "books.close.confirm.missing");
        }
        boolean closed = fields.run(() -> closePeriod.close(new ClosePeriod.Close(id, month, viewer.id())));
        if (closed) {}
        return closed
                ? Response.seeOther(URI.create("/books/months/" + month + "?done=books.closed"))
                        .build()
                : Response.status(fields.status())
                        .entity(page(listed(month), fields))
                        .build();
    }

    /** The month, or the one that closes next where the books have no such month. */
    private YearMonth listed(YearMonth month) {
        return readLedger.periods().stream().anyMatch(period -> period.month().equals(month))
                ? month
                : readLedger.oldestOpen();
    }

    /** A month of the address; refuses as not found what is none. */
    static YearMonth parsed(String text) {
        try {
            return YearMonth.parse(text);
        } catch (DateTimeException e) {
            throw new WebRefusal.NoSuchPage();
        }
    }
}
