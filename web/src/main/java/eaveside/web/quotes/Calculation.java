package eaveside.web.quotes;

import eaveside.catalog.Catalog;
import eaveside.catalog.StandardMinutes;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Refusal;
import eaveside.kernel.SurfaceId;
import eaveside.pricing.ExplanationText;
import eaveside.pricing.PriceBook;
import eaveside.pricing.PriceWork;
import eaveside.pricing.PricedWork;
import eaveside.pricing.QuoteScope;
import eaveside.pricing.WorkLine;
import eaveside.web.forms.Fields;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/** Prices what a form asks for, without storing it. */
@Dependent
class Calculation {
    private final PriceWork priceWork;
    private final ReadSurfaces readSurfaces;
    private final Catalog catalog;

    @Inject
    Calculation(PriceWork priceWork, ReadSurfaces readSurfaces, Catalog catalog) {
        this.priceWork = priceWork;
        this.readSurfaces = readSurfaces;
        this.catalog = catalog;
    }

    /**
     * What cannot be priced is said in words; a row whose quantity cannot be read stays without a price.
     *
     * @param  reading what was typed, apart from the fields that the page shows: here only the lines' errors count
     */
    Calculated calculate(QuoteForm form, Fields reading, PriceBook book, Locale locale) {
        List<QuoteForm.Asked> asked = form.lines(reading);
        List<String> errors =
                new ArrayList<>(reading.errors().values().stream().distinct().toList());
        if (asked.isEmpty()) {
            return new Calculated(Map.of(), null, StandardMinutes.ZERO, book.list(), errors);
        }
        try {
            PricedWork priced = priceWork.price(book.id(), work(asked));
            Map<String, Calculated.Line> lines = new HashMap<>();
            StandardMinutes minutes = StandardMinutes.ZERO;
            for (int i = 0; i < asked.size(); i++) {
                PricedWork.Line line = priced.lines().get(i);
                lines.put(
                        asked.get(i).prefix(),
                        new Calculated.Line(
                                line.unitPrice(), line.net(), ExplanationText.of(line.explanation(), locale)));
                minutes = minutes.plus(catalog.serviceItem(line.serviceItem()).minutesFor(line.quantity()));
            }
            // A total that leaves a row out would be a false one.
            return new Calculated(lines, errors.isEmpty() ? priced : null, minutes, book.list(), errors);
        } catch (Refusal refusal) {
            errors.add(refusal.text());
            return new Calculated(Map.of(), null, StandardMinutes.ZERO, book.list(), errors);
        }
    }

    private List<WorkLine> work(List<QuoteForm.Asked> asked) {
        List<SurfaceId> ids = asked.stream()
                .map(a -> a.line().surface())
                .filter(Objects::nonNull)
                .distinct()
                .toList();
        Map<SurfaceId, Surface> surfaces = readSurfaces.surfaces(ids);
        List<WorkLine> work = new ArrayList<>();
        for (QuoteForm.Asked a : asked) {
            QuoteScope.Line line = a.line();
            Surface surface = line.surface() == null ? null : surfaces.get(line.surface());
            Map<SurfaceAttribute, Integer> attributes = surface == null ? Map.of() : surface.attributes();
            work.add(new WorkLine(line.id(), line.serviceItem(), line.quantity(), attributes, null));
        }
        return work;
    }
}
