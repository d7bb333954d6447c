package eaveside.web.margins;

import eaveside.ledger.Books;
import eaveside.ledger.ReadLedger;
import eaveside.margins.MarginComparison;
import eaveside.margins.MarginReport;
import eaveside.margins.MarginRow;
import eaveside.margins.Period;
import eaveside.margins.ReadMargins;
import eaveside.reports.MarginPaper;
import eaveside.reports.Papers;
import eaveside.web.Page;
import eaveside.web.Texts;
import eaveside.web.forms.Fields;
import eaveside.web.forms.PageResource;
import eaveside.web.forms.Respond;
import eaveside.web.forms.Span;
import eaveside.web.papers.Letterheads;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.YearMonth;
import java.util.Locale;
import java.util.function.Function;

/** Margin by service line; the page, the paper and the spreadsheet are made of one reading of the ledger each. */
@Path("/margins")
@Dependent
@RolesAllowed(Roles.OWNER)
public class MarginPages extends PageResource {
    @Inject
    ReadMargins readMargins;

    @Inject
    ReadLedger readLedger;

    @Inject
    Books books;

    @Inject
    Papers papers;

    @Inject
    Letterheads letterheads;

    @Context
    UriInfo asked;

    public record MarginsPage(Fields fields, Span span, MarginComparison comparison, MarginChart chart, Opens opens)
            implements Page {}

    /** This month's, where no days are typed. */
    private Span span(Fields fields) {
        return Span.of(fields, YearMonth.from(books.today()).atEndOfMonth());
    }

    @GET
    @Transactional
    public Response margins() {
        Fields fields = viewer.fields(asked.getQueryParameters());
        return shown(fields, span(fields));
    }

    private Response shown(Fields fields, Span span) {
        MarginComparison comparison = readMargins.compare(new Period(span.from(), span.to()));
        return Respond.again(
                fields,
                new MarginsPage(
                        fields,
                        span,
                        comparison,
                        MarginChart.of(comparison, books.zero()),
                        new Opens(readLedger.accountsInRoles())));
    }

    @GET
    @Path("margins.pdf")
    @Produces(Papers.PDF)
    @Transactional
    public Response pdf() {
        return file(papers::marginPdf, Papers.PDF, "pdf");
    }

    @GET
    @Path("margins.xlsx")
    @Produces(Papers.XLSX)
    @Transactional
    public Response xlsx() {
        return file(papers::marginXlsx, Papers.XLSX, "xlsx");
    }

    /** The file of the days asked for, or the page that says what is wrong with them. */
    private Response file(Function<MarginPaper, byte[]> print, String type, String ending) {
        Fields fields = viewer.fields(asked.getQueryParameters());
        Span span = span(fields);
        if (fields.hasErrors()) {
            return Response.fromResponse(shown(fields, span))
                    .type(MediaType.TEXT_HTML_TYPE)
                    .build();
        }
        String name = "margin-" + span.from() + "-" + span.to() + "." + ending;
        return Respond.inline(print.apply(paper(readMargins.margin(new Period(span.from(), span.to())))), type, name);
    }

    /** The same figures as on the page, no sums of its own. */
    private MarginPaper paper(MarginReport report) {
        return new MarginPaper(
                letterheads.current(),
                report.period().from(),
                report.period().to(),
                report.lines().stream().map(l -> line(l.name(), l.row())).toList(),
                line(Texts.of(Locale.ENGLISH, "margins.all-lines"), report.total()),
                report.unassigned().isEmpty()
                        ? null
                        : line(Texts.of(Locale.ENGLISH, "margins.unassigned"), report.uncharged()),
                report.result().amount(),
                Texts.of(Locale.ENGLISH, "margins.paper-note"));
    }

    static MarginPaper.Line line(String name, MarginRow row) {
        return new MarginPaper.Line(
                name,
                row.revenue().amount(),
                row.labor().amount(),
                row.consumables().amount(),
                row.travel().amount(),
                row.overhead().amount(),
                row.margin().amount(),
                row.noCharge().amount(),
                row.fromFindings().amount());
    }
}
