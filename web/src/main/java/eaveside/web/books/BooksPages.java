package eaveside.web.books;

import eaveside.access.Sight;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRole;
import eaveside.ledger.AccountingPeriod;
import eaveside.ledger.Books;
import eaveside.ledger.ClosePeriod;
import eaveside.ledger.ClosePeriod.Close;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReadVariances.Variance;
import eaveside.ledger.TrialBalance;
import eaveside.reports.Papers;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.PageResource;
import eaveside.web.forms.Respond;
import eaveside.web.forms.Span;
import eaveside.web.security.Roles;
import eaveside.web.security.Sees;
import eaveside.web.security.WebRefusal;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.DateTimeException;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The trial balance as page, paper and file, and the months: their variances, what is open of them, their close. */
@Path("/books")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Sees(Sight.BOOKS)
public class BooksPages extends PageResource {
    @Inject
    ReadLedger readLedger;

    @Inject
    Books books;

    @Inject
    TrialBalancePapers trialBalancePapers;

    @Inject
    MonthEnd monthEnd;

    @Inject
    ClosePeriod closePeriod;

    /** The trial balance, and the months with their state. */
    public record BooksPage(TrialBalance balance, Span span, List<AccountingPeriod> periods, Fields fields)
            implements Page {}

    /**
     * One month.
     *
     * @param  oldestOpen the month that closes next
     * @param  ended      whether the month is over
     * @param  goods      the account of goods that no supplier has invoiced
     */
    public record MonthPage(Month shown, YearMonth oldestOpen, boolean ended, AccountCode goods, Form<Close> form)
            implements Page {
        /** The entries of the accounts in the month. */
        public String entries(List<AccountCode> accounts) {
            YearMonth month = shown.month();
            String span = "&from=" + month.atDay(1) + "&to=" + month.atEndOfMonth();
            return accounts.stream()
                    .map(code -> "account=" + code)
                    .collect(Collectors.joining("&", "/books/entries?", span));
        }

        /** The entries behind a variance: of what was spent and of what was applied. */
        public String entries(Variance variance) {
            return entries(Stream.concat(variance.actualCodes().stream(), variance.appliedCodes().stream())
                    .toList());
        }
    }

    @GET
    @Transactional
    public Response books(@Context UriInfo asked) {
        Fields fields = viewer.fields(asked.getQueryParameters());
        return Respond.again(fields, page(fields));
    }

    private BooksPage page(Fields fields) {
        Span span = Span.of(fields, books.today());
        return new BooksPage(readLedger.trialBalance(span.from(), span.to()), span, readLedger.periods(), fields);
    }

    @GET
    @Path("trial-balance.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(@Context UriInfo asked) {
        return file(asked, trialBalancePapers::csv);
    }

    @GET
    @Path("trial-balance.pdf")
    @Produces(Papers.PDF)
    @Transactional
    public Response pdf(@Context UriInfo asked) {
        return file(asked, trialBalancePapers::pdf);
    }

    /** The file of the days asked for, or the page that says what is wrong with them. */
    private Response file(UriInfo asked, Function<TrialBalance, Response> print) {
        Fields fields = viewer.fields(asked.getQueryParameters());
        Span span = Span.of(fields, books.today());
        return fields.hasErrors()
                ? Response.status(fields.status())
                        .type(MediaType.TEXT_HTML_TYPE)
                        .entity(page(fields))
                        .build()
                : print.apply(readLedger.trialBalance(span.from(), span.to()));
    }

    @GET
    @Path("months/{month}")
    @Transactional
    public MonthPage month(@PathParam("month") String month) {
        return page(parsed(month), viewer.fresh(Close.class, Map.of("month", month)));
    }

    private MonthPage page(YearMonth month, Form<Close> form) {
        form.labeled("books").fields().called("confirm", viewer.view().t("books.close.confirmation"));
        return new MonthPage(
                monthEnd.month(month),
                readLedger.oldestOpen(),
                monthEnd.isOver(month),
                Objects.requireNonNull(readLedger.accountsInRoles().get(AccountRole.GOODS_NOT_INVOICED)),
                form);
    }

    @POST
    @Path("close")
    @RolesAllowed(Roles.OWNER)
    public Response close(Form<Close> form) {
        String month = form.fields().typed("month");
        if (!form.fields().ticked("confirm")) {
            form.fields().wrong("confirm", "books.close.confirm.missing");
        }
        return form.run(closePeriod::close)
                ? Respond.to("/books/months/" + month, "books.closed")
                : Respond.again(form.fields(), page(listed(month), form));
    }

    /** The month, or the one that closes next where the books have no such month. */
    private YearMonth listed(String month) {
        return readLedger.periods().stream()
                .map(AccountingPeriod::month)
                .filter(listed -> listed.toString().equals(month))
                .findFirst()
                .orElseGet(readLedger::oldestOpen);
    }

    /** A month of the address; refuses as not found what is none. */
    static YearMonth parsed(String month) {
        try {
            return YearMonth.parse(month);
        } catch (DateTimeException e) {
            throw new WebRefusal.NoSuchPage();
        }
    }
}
