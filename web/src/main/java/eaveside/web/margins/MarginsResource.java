package eaveside.web.margins;

import eaveside.access.Role;
import eaveside.ledger.Books;
import eaveside.ledger.CostType;
import eaveside.ledger.ReadLedger;
import eaveside.margins.MarginComparison;
import eaveside.margins.MarginReport;
import eaveside.margins.Period;
import eaveside.margins.ReadMargins;
import eaveside.reports.Papers;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
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
import java.time.LocalDate;
import java.time.YearMonth;

/** Margin by service line; the page, the paper and the spreadsheet are made of one reading of the ledger each. */
@Path("/margins")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For(Role.OWNER)
public class MarginsResource {
    private final ReadMargins readMargins;
    private final ReadLedger readLedger;
    private final Books books;
    private final Papers papers;
    private final MarginPapers marginPapers;
    private final Viewer viewer;

    @Context
    UriInfo uri;

    @Inject
    public MarginsResource(
            ReadMargins readMargins,
            ReadLedger readLedger,
            Books books,
            Papers papers,
            MarginPapers marginPapers,
            Viewer viewer) {
        this.viewer = viewer;
        this.readMargins = readMargins;
        this.readLedger = readLedger;
        this.books = books;
        this.papers = papers;
        this.marginPapers = marginPapers;
    }

    /** @param  query the period, for links to the paper and the spreadsheet */
    public record MarginsPage(
            Fields fields,
            Period period,
            MarginComparison comparison,
            MarginChart chart,
            Opens opens,
            YearMonth before,
            YearMonth after,
            String query)
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
    }

    @GET
    @Transactional
    public MarginsPage margins() {
        Fields fields = viewer.fields(uri.getQueryParameters());
        Period period = period(fields);
        MarginComparison comparison = readMargins.compare(period);
        YearMonth month = YearMonth.from(period.from());
        return new MarginsPage(
                fields,
                period,
                comparison,
                MarginChart.of(comparison, books.zero()),
                Opens.of(readLedger),
                month.minusMonths(1),
                month.plusMonths(1),
                "?from=" + period.from() + "&to=" + period.to());
    }

    @GET
    @Path("margins.pdf")
    @Produces(Papers.PDF)
    @Transactional
    public Response pdf() {
        Period period = period(viewer.fields(uri.getQueryParameters()));
        return file(papers.marginPdf(marginPapers.paper(readMargins.margin(period))), Papers.PDF, period, "pdf");
    }

    @GET
    @Path("margins.xlsx")
    @Produces(Papers.XLSX)
    @Transactional
    public Response xlsx() {
        Period period = period(viewer.fields(uri.getQueryParameters()));
        return file(papers.marginXlsx(marginPapers.paper(readMargins.margin(period))), Papers.XLSX, period, "xlsx");
    }

    private static Response file(byte[] content, String type, Period period, String ending) {
        return Response.ok(content)
                .type(type)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "inline; filename=\"margin-" + period.from() + "-" + period.to() + "." + ending + "\"")
                .build();
    }

    private Period period(Fields fields) {
        LocalDate today = books.today();
        LocalDate first = today.withDayOfMonth(1);
        return new Period(
                fields.typed("from").isEmpty() ? first : fields.date("from", first),
                fields.typed("to").isEmpty() ? YearMonth.from(first).atEndOfMonth() : fields.date("to", today));
    }
}
