package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.costing.CostRates;
import eaveside.costing.ReadCostRates;
import eaveside.costing.SetCostRates;
import eaveside.kernel.Money;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.ledger.Books;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
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
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.math.BigDecimal;
import java.net.URI;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** What an hour and a mile cost the company, from which day on. */
@Path("/settings/rates")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For(Role.OWNER)
public class RatesResource {
    private final ReadCostRates readCostRates;
    private final SetCostRates setCostRates;
    private final Books books;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public RatesResource(
            ReadCostRates readCostRates, SetCostRates setCostRates, Books books, Viewer viewer, AuditLog auditLog) {
        this.readCostRates = readCostRates;
        this.setCostRates = setCostRates;
        this.books = books;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /** @param  today tells which of the dated rates hold now */
    public record RatesPage(List<CostRates> rates, LocalDate today, String currency, Unit distance, Fields fields)
            implements Page {
        @Override
        public String template() {
            return "settings/rates.jte";
        }

        /** The newest that have begun. */
        public boolean inForce(CostRates asked) {
            return rates.stream()
                    .filter(r -> !r.from().isAfter(today))
                    .findFirst()
                    .filter(asked::equals)
                    .isPresent();
        }
    }

    @GET
    @Transactional
    public RatesPage rates() {
        return page(Fields.showing(Map.of("from", books.today().toString())));
    }

    private RatesPage page(Fields fields) {
        return new RatesPage(
                readCostRates.all(), books.today(), books.currency().getCode(), distance(), fields);
    }

    private Unit distance() {
        return viewer.view().us() ? Unit.MILE : Unit.KILOMETER;
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response set(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        LocalDate from = fields.date("from", books.today());
        Money labor = fields.money("laborPerHour", books.currency());
        BigDecimal travel = fields.decimal("travelPerDistance");
        Money overhead = fields.money("overheadPerHour", books.currency());
        boolean set = fields.run(() -> setCostRates.set(
                new CostRates(from, labor, UnitPrice.perOne(books.currency(), travel, distance()), overhead),
                viewer.id()));
        if (!set) {
            return Response.status(fields.status()).entity(page(fields)).build();
        }
        auditLog.done("rates.set", from);
        return Response.seeOther(URI.create("/settings/rates?done=settings.saved"))
                .build();
    }
}
