package eaveside.web.margins;

import eaveside.kernel.Money;
import eaveside.ledger.Books;
import eaveside.ledger.CostType;
import eaveside.margins.MarginReport;
import eaveside.margins.Period;
import eaveside.margins.ReadMargins;
import eaveside.reports.MarginPaper;
import eaveside.web.forms.JsonResource;
import eaveside.web.forms.Span;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Margin by service line for scripts: the lines of the paper. */
@Path("/api/margins")
@Dependent
@RolesAllowed(Roles.OWNER)
@Tag(name = "Margins")
public class MarginsApi extends JsonResource {
    @Inject
    ReadMargins readMargins;

    @Inject
    Books books;

    /** @param  result the total margin less what is unassigned: the profit by the ledger */
    public record Report(
            LocalDate from,
            LocalDate to,
            List<MarginPaper.Line> lines,
            MarginPaper.Line total,
            List<Unassigned> unassigned,
            Money result) {
        static Report of(MarginReport report) {
            return new Report(
                    report.period().from(),
                    report.period().to(),
                    report.lines().stream()
                            .map(line -> MarginPages.line(line.name(), line.row()))
                            .toList(),
                    MarginPages.line("", report.total()),
                    report.unassigned().stream().map(Unassigned::of).toList(),
                    report.result().amount());
        }
    }

    /**
     * A cost that no service line is charged with; below zero an income.
     *
     * @param  type    what it counts as; absent for an income
     * @param  actual  what was spent, where the cost is a variance, and
     * @param  applied what was absorbed into services; both absent where it is none
     */
    public record Unassigned(
            String account,
            String name,
            @Nullable CostType type,
            @Nullable Money actual,
            @Nullable Money applied,
            Money cost) {
        static Unassigned of(MarginReport.Unassigned row) {
            MarginReport.Variance variance = row.variance();
            return new Unassigned(
                    row.code(),
                    row.name(),
                    row.type(),
                    variance == null ? null : variance.actual().amount(),
                    variance == null ? null : variance.applied().amount(),
                    row.cost().amount());
        }
    }

    @GET
    @Transactional
    @Operation(
            summary = "What each service line earned between two days, by posting date",
            description = "This month's, where no days are named.")
    public Report margins(@QueryParam("from") @Nullable LocalDate from, @QueryParam("to") @Nullable LocalDate to) {
        Span span = Span.of(from, to, YearMonth.from(books.today()).atEndOfMonth());
        return Report.of(readMargins.margin(new Period(span.from(), span.to())));
    }
}
