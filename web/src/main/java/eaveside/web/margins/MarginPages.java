package eaveside.web.margins;

import eaveside.access.Role;
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
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Margin by service line; the page, the paper and the spreadsheet are made of one reading of the ledger each. */
@Path("/margins")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For(Role.OWNER)
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

    public record MarginsPage(Fields fields, Period period, MarginComparison comparison, MarginChart chart, Opens opens)
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
            return YearMonth.from(period.from()).minusMonths(1);
        }

        public YearMonth after() {
            return YearMonth.from(period.from()).plusMonths(1);
        }

        /** The period, for links to the paper and the spreadsheet. */
        public String query() {
            return "?from=" + period.from() + "&to=" + period.to();
        }

        /** A day as it stands in the filter: what was typed where that could not be read. */
        public String day(String name) {
            return fields.hasErrors()
                    ? fields.typed(name)
                    : (name.equals("from") ? period.from() : period.to()).toString();
        }
    }

    /** This month's, where no days are named. */
    static Period period(@Nullable LocalDate from, @Nullable LocalDate to, LocalDate today) {
        YearMonth month = YearMonth.from(today);
        return new Period(from == null ? month.atDay(1) : from, to == null ? month.atEndOfMonth() : to);
    }

    private Period period(Fields fields) {
        LocalDate today = books.today();
        LocalDate from = fields.typed("from").isEmpty() ? null : fields.date("from", today);
        LocalDate to = fields.typed("to").isEmpty() ? null : fields.date("to", today);
        Period asked = fields.made("to", () -> period(from, to, today));
        return asked == null ? period(null, null, today) : asked;
    }

    @GET
    @Transactional
    public Response margins(@Context UriInfo asked) {
        Fields fields = viewer.fields(asked.getQueryParameters());
        return shown(fields, period(fields));
    }

    private Response shown(Fields fields, Period period) {
        MarginComparison comparison = readMargins.compare(period);
        return Respond.again(
                fields,
                new MarginsPage(
                        fields, period, comparison, MarginChart.of(comparison, books.zero()), Opens.of(readLedger)));
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
        Period period = period(fields);
        if (fields.hasErrors()) {
            return Response.fromResponse(shown(fields, period))
                    .type(MediaType.TEXT_HTML_TYPE)
                    .build();
        }
        return Response.ok(print.apply(marginPapers.paper(readMargins.margin(period))))
                .type(type)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "inline; filename=\"margin-" + period.from() + "-" + period.to() + "." + ending + "\"")
                .build();
    }
}
