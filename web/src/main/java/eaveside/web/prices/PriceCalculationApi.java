package eaveside.web.prices;

import eaveside.access.Role;
import eaveside.catalog.Catalog;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.ledger.Books;
import eaveside.pricing.ExplanationText;
import eaveside.pricing.PriceWork;
import eaveside.pricing.PricedWork;
import eaveside.pricing.ReadPriceBooks;
import eaveside.pricing.WorkLine;
import eaveside.web.security.For;
import eaveside.web.security.Untold;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Prices work for scripts without storing anything. */
@Path("/api/prices/calculation")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Prices")
@For({Role.OWNER, Role.OFFICE})
@Untold("it works out and changes nothing")
public class PriceCalculationApi {
    private final PriceWork priceWork;
    private final ReadPriceBooks readPriceBooks;
    private final ReadSurfaces readSurfaces;
    private final Catalog catalog;
    private final Books books;
    private final Viewer viewer;

    @Inject
    public PriceCalculationApi(
            PriceWork priceWork,
            ReadPriceBooks readPriceBooks,
            ReadSurfaces readSurfaces,
            Catalog catalog,
            Books books,
            Viewer viewer) {
        this.priceWork = priceWork;
        this.readPriceBooks = readPriceBooks;
        this.readSurfaces = readSurfaces;
        this.catalog = catalog;
        this.books = books;
        this.viewer = viewer;
    }

    /**
     * Work to price.
     *
     * @param  unit       code of UN/ECE Recommendation 20; absent for the unit that the service is counted in
     * @param  surface    whose attributes decide the surcharges; absent to name them in the line, or for none
     * @param  attributes such as {@code {"STORY": 2}}
     */
    public record Asked(
            @Nullable String serviceItem,
            @Nullable BigDecimal quantity,
            @Nullable String unit,
            @Nullable String surface,
            @Nullable Map<String, Integer> attributes) {}

    /** What is done on one visit; priced from the named book, or from the one in force on the day or today. */
    public record Scope(
            @Nullable String book,
            @Nullable LocalDate date,
            @Nullable List<Asked> lines) {}

    /** A priced line, in the order that it was asked in. */
    public record Line(
            String serviceItem,
            String serviceLine,
            BigDecimal quantity,
            String unit,
            BigDecimal unitPrice,
            BigDecimal baseQuantity,
            BigDecimal netBeforeTopUp,
            BigDecimal topUp,
            BigDecimal net,
            String explanation) {
        static Line of(PricedWork.Line line, Locale locale) {
            return new Line(
                    line.serviceItem().toString(),
                    line.serviceLine().toString(),
                    line.quantity().value(),
                    line.quantity().unit().code(),
                    line.unitPrice().amount(),
                    line.unitPrice().base().value(),
                    line.netBeforeTopUp().amount(),
                    line.topUp().amount(),
                    line.net().amount(),
                    ExplanationText.of(line.explanation(), locale));
        }
    }

    /** Net of tax. */
    public record Calculated(String book, String currency, List<Line> lines, BigDecimal total) {}

    @POST
    @Operation(summary = "Prices the work of a visit, each line with the sentence that explains it; stores nothing")
    public Calculated calculate(@Nullable Scope scope) {
        if (scope == null) {
            throw new WebRefusal.Unreadable("The body is empty");
        }
        PriceBookId book = scope.book() != null
                ? PriceBookId.of(scope.book())
                : readPriceBooks
                        .inForce(scope.date() == null ? books.today() : scope.date())
                        .id();
        List<WorkLine> work = new ArrayList<>();
        for (Asked line : scope.lines() == null ? List.<Asked>of() : scope.lines()) {
            work.add(line(line));
        }
        PricedWork priced = priceWork.price(book, work);
        Locale locale = viewer.view().locale();
        return new Calculated(
                book.toString(),
                priced.total().currency().getCode(),
                priced.lines().stream().map(line -> Line.of(line, locale)).toList(),
                priced.total().amount());
    }

    private WorkLine line(Asked asked) {
        if (asked.serviceItem() == null || asked.quantity() == null) {
            throw new WebRefusal.Unreadable("A line names a service and a quantity");
        }
        ServiceItemId serviceItem = ServiceItemId.of(asked.serviceItem());
        Unit unit = asked.unit() == null ? catalog.serviceItem(serviceItem).unit() : Unit.ofCode(asked.unit());
        Map<SurfaceAttribute, Integer> attributes = asked.surface() == null
                ? attributes(asked.attributes() == null ? Map.of() : asked.attributes())
                : readSurfaces.surface(SurfaceId.of(asked.surface())).attributes();
        return new WorkLine(QuoteLineId.next(), serviceItem, Quantity.of(asked.quantity(), unit), attributes, null);
    }

    private static Map<SurfaceAttribute, Integer> attributes(Map<String, Integer> named) {
        Map<SurfaceAttribute, Integer> attributes = new EnumMap<>(SurfaceAttribute.class);
        named.forEach((name, value) -> {
            try {
                attributes.put(SurfaceAttribute.valueOf(name), value);
            } catch (IllegalArgumentException e) {
                throw new WebRefusal.Unreadable("There is no surface attribute '" + name + "'");
            }
        });
        return attributes;
    }
}
