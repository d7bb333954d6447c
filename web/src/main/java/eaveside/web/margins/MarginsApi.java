package eaveside.web.margins;

import eaveside.access.Role;
import eaveside.margins.Figure;
import eaveside.margins.MarginReport;
import eaveside.margins.MarginRow;
import eaveside.margins.Period;
import eaveside.margins.ReadMargins;
import eaveside.web.Json;
import eaveside.web.Json.Amount;
import eaveside.web.security.For;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Margin by service line for scripts. */
@Path("/api/margins")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@For(Role.OWNER)
@Tag(name = "Margins")
public class MarginsApi {
    private final ReadMargins readMargins;

    @Inject
    public MarginsApi(ReadMargins readMargins) {
        this.readMargins = readMargins;
    }

    /** The figures of a service line, or of all. */
    public record Row(
            String name,
            Amount revenue,
            Amount labor,
            Amount consumables,
            Amount travel,
            Amount overhead,
            Amount margin,
            Amount noCharge,
            Amount fromFindings) {
        static Row of(String name, MarginRow row) {
            return new Row(
                    name,
                    amount(row.revenue()),
                    amount(row.labor()),
                    amount(row.consumables()),
                    amount(row.travel()),
                    amount(row.overhead()),
                    amount(row.margin()),
                    amount(row.noCharge()),
                    amount(row.fromFindings()));
        }
    }

    /**
     * A cost that no service line is charged with.
     *
     * @param  variance whether the cost is what was spent less what was applied to visits
     * @param  actual   spent, and
     * @param  applied  absorbed into services; null where it is no variance
     */
    public record Unassigned(
            String account,
            String name,
            boolean variance,
            @Nullable Amount actual,
            @Nullable Amount applied,
            Amount cost) {
        static Unassigned of(MarginReport.Unassigned row) {
            MarginReport.Variance variance = row.variance();
            return new Unassigned(
                    row.code(),
                    row.name(),
                    variance != null,
                    variance == null ? null : amount(variance.actual()),
                    variance == null ? null : amount(variance.applied()),
                    amount(row.cost()));
        }
    }

    /** The report. */
    public record Report(
            String from, String to, List<Row> lines, Row total, List<Unassigned> unassigned, Amount result) {}

    private static Amount amount(Figure figure) {
        return Amount.of(figure.amount());
    }

    @GET
    @Transactional
    @Operation(summary = "What each service line earned between two days, by posting date")
    public Report margins(@QueryParam("from") @Nullable String from, @QueryParam("to") @Nullable String to) {
        MarginReport report = readMargins.margin(new Period(Json.date("from", from), Json.date("to", to)));
        return new Report(
                report.period().from().toString(),
                report.period().to().toString(),
                report.lines().stream().map(l -> Row.of(l.name(), l.row())).toList(),
                Row.of("", report.total()),
                report.unassigned().stream().map(Unassigned::of).toList(),
                amount(report.result()));
    }
}
