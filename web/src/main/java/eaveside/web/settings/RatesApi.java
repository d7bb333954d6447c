package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.costing.CostRates;
import eaveside.costing.ReadCostRates;
import eaveside.costing.SetCostRates;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.ledger.Books;
import eaveside.web.Json;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** What an hour and a distance cost the company, from which day on, for scripts; the owner's alone. */
@Path("/api/settings/rates")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For(Role.OWNER)
@Tag(name = "Settings")
public class RatesApi {
    private final ReadCostRates readCostRates;
    private final SetCostRates setCostRates;
    private final Books books;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public RatesApi(
            ReadCostRates readCostRates, SetCostRates setCostRates, Books books, Viewer viewer, AuditLog auditLog) {
        this.readCostRates = readCostRates;
        this.setCostRates = setCostRates;
        this.books = books;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /**
     * Dated rates; amounts are texts in the company's currency.
     *
     * @param  from              the first day that they apply on
     * @param  laborPerHour     of a labor hour
     * @param  travelPerDistance of one of the unit
     * @param  distance          the unit, SMI or KMT of UN/ECE Recommendation 20
     * @param  overheadPerHour   that a labor hour carries
     */
    public record Rates(
            @Nullable String from,
            @Nullable String laborPerHour,
            @Nullable String travelPerDistance,
            @Nullable String distance,
            @Nullable String overheadPerHour) {
        static Rates of(CostRates rates) {
            return new Rates(
                    rates.from().toString(),
                    rates.laborPerHour().amount().toPlainString(),
                    rates.travelPerDistance().amount().toPlainString(),
                    rates.travelPerDistance().base().unit().code(),
                    rates.overheadPerHour().amount().toPlainString());
        }

        CostRates read(CurrencyUnit currency) {
            return new CostRates(
                    Json.date("from", from),
                    Json.money("laborPerHour", laborPerHour, currency),
                    UnitPrice.perOne(
                            currency,
                            Json.number("travelPerDistance", travelPerDistance),
                            Unit.ofCode(Json.required("distance", distance))),
                    Json.money("overheadPerHour", overheadPerHour, currency));
        }
    }

    /** Every rate that is, was or will be in force. */
    public record AllRates(String currency, List<Rates> rates) {}

    @GET
    @Transactional
    @Operation(summary = "All rates that are, were or will be in force, the newest day first")
    public AllRates rates() {
        return new AllRates(
                books.currency().getCode(),
                readCostRates.all().stream().map(Rates::of).toList());
    }

    @POST
    @Operation(summary = "Sets what labor, travel and overhead cost from a day on; the same again is a retry")
    public Rates set(@Nullable Rates body) {
        CostRates rates = Json.required("body", body).read(books.currency());
        setCostRates.set(rates, viewer.id());
        auditLog.done("rates.set", rates.from());
        return Rates.of(rates);
    }
}
