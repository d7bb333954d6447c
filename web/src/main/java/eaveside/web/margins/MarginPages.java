package eaveside.web.margins;

import eaveside.ledger.Books;
import eaveside.ledger.CostType;
import eaveside.ledger.ReadLedger;
import eaveside.margins.MarginComparison;
import eaveside.margins.MarginReport;
import eaveside.margins.Period;
import eaveside.margins.ReadMargins;
import eaveside.reports.MarginPaper;
import eaveside.reports.Papers;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Respond;
import eaveside.web.forms.Span;
import eaveside.web.security.Roles;
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
import java.time.YearMonth;
import java.util.function.Function;

/** Margin by service line; the page, the paper and the spreadsheet are made of one reading of the ledger each. */
@Path("/margins")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed(Roles.OWNER)
public class MarginPages {
    @Inject
    ReadMargins readMargins;

    @Inject
    ReadLedger readLedger;

    @Inject
    Books books;

    @Inject
    Papers papers;

    @Inject
    MarginPapers marginPapers;

    @Inject
    Viewer viewer;

    public record MarginsPage(Fields fields, Span span, MarginComparison comparison, MarginChart chart, Opens opens)
            implements Page {
        @Override
        public String template() {
            return "margins/margins.jte";
        }

        public MarginReport report() {
            return comparison.current();
        }

        public CostType[] costTypes() {
            return CostType.values();
        }

        public YearMonth before() {
            return YearMonth.from(span.from()).minusMonths(1);
        }

        public YearMonth after() {
            return YearMonth.from(span.from()).plusMonths(1);
        }
    }

    /** This month's, where no days are typed. */
    private Span span(Fields fields) {
        return Span.of(fields, YearMonth.from(books.today()).atEndOfMonth());
    }

    @GET
    @Transactional
    public Response margins(@Context UriInfo asked) {
        Fields fields = viewer.fields(asked.getQueryParameters());
        return shown(fields, span(fields));
    }

    private Response shown(Fields fields, Span span) {
        MarginComparison comparison = readMargins.compare(new Period(span.from(), span.to()));
        return Respond.again(
                fields,
                new MarginsPage(
                        fields, span, comparison, MarginChart.of(comparison, books.zero()), Opens.of(readLedger)));
    }

    @GET
    @Path("margins.pdf")
    @Produces(Papers.PDF)
    @Transactional
    public Response pdf(@Context UriInfo asked) {
        return file(asked, papers::marginPdf, Papers.PDF, "pdf");
    }

    @GET
    @Path("margins.xlsx")
    @Produces(Papers.XLSX)
    @Transactional
    public Response xlsx(@Context UriInfo asked) {
        return file(asked, papers::marginXlsx, Papers.XLSX, "xlsx");
    }

    /** The file of the days asked for, or the page that says what is wrong with them. */
    private Response file(UriInfo asked, Function<MarginPaper, byte[]> print, String type, String ending) {
        Fields fields = viewer.fields(asked.getQueryParameters());
        Span span = span(fields);
        if (fields.hasErrors()) {
            return Response.fromResponse(shown(fields, span))
                    .type(MediaType.TEXT_HTML_TYPE)
                    .build();
        }
        return Response.ok(print.apply(marginPapers.paper(readMargins.margin(new Period(span.from(), span.to())))))
                .type(type)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "inline; filename=\"margin-" + span.from() + "-" + span.to() + "." + ending + "\"")
                .build();
    }
}
