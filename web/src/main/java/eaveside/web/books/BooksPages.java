package eaveside.web.books;

import eaveside.access.Sight;
import eaveside.ledger.AccountingPeriod;
import eaveside.ledger.Books;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.TrialBalance;
import eaveside.reports.Papers;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Respond;
import eaveside.web.forms.Span;
import eaveside.web.security.Roles;
import eaveside.web.security.Sees;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.function.Function;

/** The trial balance as page, paper and file, and the months. */
@Path("/books")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Sees(Sight.BOOKS)
public class BooksPages {
    @Inject
    ReadLedger readLedger;

    @Inject
    Books books;

    @Inject
    Papers papers;

    @Inject
    TrialBalancePapers trialBalancePapers;

    @Inject
    Viewer viewer;

    /** The trial balance, and the months with their state. */
    public record BooksPage(TrialBalance balance, Span span, List<AccountingPeriod> periods, Fields fields)
            implements Page {
        @Override
        public String template() {
            return "books/books.jte";
        }

        /** The entries behind an account's opening balance. */
        public String opening(TrialBalance.Row row) {
            return "/books/entries?account=" + row.account() + "&to="
                    + balance.from().minusDays(1);
        }

        /** The entries behind an account's change. */
        public String change(TrialBalance.Row row) {
            return "/books/entries?account=" + row.account() + "&from=" + balance.from() + "&to=" + balance.to();
        }

        /** The entries behind an account's closing balance. */
        public String closing(TrialBalance.Row row) {
            return "/books/entries?account=" + row.account() + "&to=" + balance.to();
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
        return file(
                asked,
                balance -> Response.ok(papers.trialBalance(trialBalancePapers.paper(balance)))
                        .type(Papers.PDF)
                        .header(
                                HttpHeaders.CONTENT_DISPOSITION,
                                "inline; filename=\"trial-balance-" + balance.from() + "-" + balance.to() + ".pdf\"")
                        .build());
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
}
