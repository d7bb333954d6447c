package eaveside.web.quotes;

import eaveside.catalog.Catalog;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.Slice;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.pricing.Earnings;
import eaveside.pricing.ExpectedTravel;
import eaveside.pricing.ExplanationText;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteScope;
import eaveside.pricing.ReadQuotes;
import eaveside.web.View;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The bodies of the quotes' API, and their reading. Units are codes of UN/ECE Recommendation 20. */
@Dependent
public class QuoteJson {
    private final Catalog catalog;
    private final Viewer viewer;

    @Inject
    QuoteJson(Catalog catalog, Viewer viewer) {
        this.catalog = catalog;
        this.viewer = viewer;
    }

    /**
     * A line that is asked for.
     *
     * @param  id   made by the caller, so that a retry is the same command
     * @param  unit absent for the unit that the service is counted in
     */
    public record Asked(
            @Nullable String id,
            @Nullable String serviceItem,
            @Nullable String surface,
            @Nullable BigDecimal quantity,
            @Nullable String unit) {}

    /**
     * What a quote offers.
     *
     * @param  drivingMinutes labor minutes, there and back
     * @param  distance       in miles or kilometers, as the company measures
     */
    public record Scope(
            @Nullable LocalDate validUntil,
            @Nullable String note,
            @Nullable Integer drivingMinutes,
            @Nullable BigDecimal distance,
            @Nullable List<Asked> lines) {}

    /** A new quote; the id is made by the caller. */
    public record Make(
            @Nullable String id,
            @Nullable String customer,
            @Nullable String site,
            @Nullable String cameFrom,
            @Nullable Scope scope) {}

    /** A change of a quote. */
    public record Revise(
            @Nullable Integer version, @Nullable Scope scope) {}

    /** What was decided about a quote, with who said what, or why not. */
    public record Decision(
            @Nullable Integer version, @Nullable String words) {}

    /** A quote in a list. */
    public record Summary(
            String id,
            long number,
            String status,
            String customer,
            String site,
            String draftedOn,
            String validUntil,
            @Nullable String cameFrom,
            BigDecimal total,
            String currency) {}

    /** A page of a list. */
    public record Summaries(List<Summary> quotes, @Nullable String next) {
        static Summaries of(Slice<ReadQuotes.Summary> slice) {
            return new Summaries(
                    slice.rows().stream()
                            .map(q -> new Summary(
                                    q.id().toString(),
                                    q.number(),
                                    q.status().name(),
                                    q.customer().toString(),
                                    q.site().toString(),
                                    q.draftedOn().toString(),
                                    q.validUntil().toString(),
                                    q.cameFrom() == null ? null : q.cameFrom().toString(),
                                    q.total().amount(),
                                    q.total().currency().getCode()))
                            .toList(),
                    slice.next());
        }
    }

    /** A line with its price, net of tax. */
    public record Line(
            String id,
            String serviceItem,
            String serviceLine,
            @Nullable String surface,
            BigDecimal quantity,
            String unit,
            BigDecimal unitPrice,
            BigDecimal baseQuantity,
            BigDecimal netBeforeTopUp,
            BigDecimal topUp,
            BigDecimal net,
            String explanation,
            BigDecimal standardMinutes,
            @Nullable BigDecimal expectedCost) {
        static Line of(Quote.Line line, View view) {
            Money cost = view.cost(line.expectedCost());
            return new Line(
                    line.id().toString(),
                    line.serviceItem().toString(),
                    line.serviceLine().toString(),
                    line.surface() == null ? null : line.surface().toString(),
                    line.quantity().value(),
                    line.quantity().unit().code(),
                    line.unitPrice().amount(),
                    line.unitPrice().base().value(),
                    line.netBeforeTopUp().amount(),
                    line.topUp().amount(),
                    line.net().amount(),
                    ExplanationText.of(line.explanation(), view.locale()),
                    line.standardMinutes().value(),
                    cost == null ? null : cost.amount());
        }
    }

    /** A quote whole; expected cost and margin (in per cent of the price) are absent for who may not see costs. */
    public record Shown(
            String id,
            long number,
            int version,
            String status,
            String customer,
            String site,
            String book,
            String draftedOn,
            String validUntil,
            @Nullable String cameFrom,
            String note,
            String currency,
            List<Line> lines,
            BigDecimal total,
            BigDecimal expectedMinutes,
            @Nullable BigDecimal expectedCost,
            @Nullable BigDecimal expectedMarginPercent,
            @Nullable String decision) {
        static Shown of(Quote quote, View view) {
            Money cost = view.cost(quote.expectedCost());
            return new Shown(
                    quote.id().toString(),
                    quote.number(),
                    quote.version(),
                    quote.status().name(),
                    quote.customer().toString(),
                    quote.site().toString(),
                    quote.book().toString(),
                    quote.draftedOn().toString(),
                    quote.validUntil().toString(),
                    quote.cameFrom() == null ? null : quote.cameFrom().toString(),
                    quote.note(),
                    quote.total().currency().getCode(),
                    quote.lines().stream().map(line -> Line.of(line, view)).toList(),
                    quote.total().amount(),
                    quote.expectedMinutes().value(),
                    cost == null ? null : cost.amount(),
                    view.seesCosts()
                            ? quote.earnings()
                                    .flatMap(Earnings::margin)
                                    .map(margin -> margin.value())
                                    .orElse(null)
                            : null,
                    quote.decision() == null ? null : quote.decision().words());
        }
    }

    /** The body, which must be there. */
    static <T> T present(@Nullable T body) {
        if (body == null) {
            throw new WebRefusal.Unreadable("The body is empty");
        }
        return body;
    }

    /** A value that the body must name. */
    static <T> T named(String name, @Nullable T value) {
        if (value == null) {
            throw new WebRefusal.Unreadable("The body does not name '" + name + "'");
        }
        return value;
    }

    QuoteScope scope(@Nullable Scope body) {
        Scope scope = named("scope", body);
        List<QuoteScope.Line> lines = new ArrayList<>();
        for (Asked asked : named("lines", scope.lines())) {
            lines.add(line(asked));
        }
        Unit way = viewer.view().us() ? Unit.MILE : Unit.KILOMETER;
        return new QuoteScope(
                named("validUntil", scope.validUntil()),
                scope.note() == null ? "" : scope.note(),
                new ExpectedTravel(
                        scope.drivingMinutes() == null ? 0 : scope.drivingMinutes(),
                        scope.distance() == null ? Quantity.zero(way) : Quantity.of(scope.distance(), way)),
                lines);
    }

    private QuoteScope.Line line(Asked asked) {
        ServiceItemId serviceItem = ServiceItemId.of(named("serviceItem", asked.serviceItem()));
        Unit unit = asked.unit() == null ? catalog.serviceItem(serviceItem).unit() : Unit.ofCode(asked.unit());
        return new QuoteScope.Line(
                QuoteLineId.of(named("id", asked.id())),
                serviceItem,
                asked.surface() == null ? null : SurfaceId.of(asked.surface()),
                Quantity.of(named("quantity", asked.quantity()), unit));
    }
}
