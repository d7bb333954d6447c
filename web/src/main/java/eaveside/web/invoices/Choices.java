package eaveside.web.invoices;

import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.catalog.TaxSetting;
import eaveside.catalog.TaxSettings;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.Shared;
import eaveside.kernel.Unit;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Options;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What the catalog offers the form of a draft: what there is to choose from, and what a line takes from its service. */
@Shared
class Choices {
    @Inject
    Catalog catalog;

    @Inject
    TaxSettings taxSettings;

    Map<String, String> serviceLines() {
        return Options.of(
                catalog.lines().stream().filter(ServiceLine::active).toList(), ServiceLine::id, ServiceLine::name);
    }

    /** What is sold, by name. */
    Map<String, String> services() {
        return Options.of(
                catalog.serviceItems().stream()
                        .filter(ServiceItem::active)
                        .sorted(Comparator.comparing(ServiceItem::name))
                        .toList(),
                ServiceItem::id,
                ServiceItem::name);
    }

    /** Each of the owner's codes with what it means today. */
    Map<String, String> taxCodes(View view) {
        // The newest day comes first: it is the one in force.
        return Options.of(
                taxSettings.all().stream()
                        .filter(tax -> !tax.from().isAfter(view.today()))
                        .toList(),
                TaxSetting::code,
                tax -> view.t(
                        "invoices.tax-choice",
                        tax.code(),
                        tax.category().hasRate()
                                ? view.percent(tax.rate())
                                : view.t("invoices.category", tax.category())));
    }

    /**
     * The form of a draft with what its lines take from newly chosen services: service line, tax, unit and description. What
     * was written by hand stays; what an earlier choice had filled in gives way ({@code line-0-took} says which that was).
     * The same form where none is new. Refuses an unknown service.
     */
    MultivaluedMap<String, String> fill(MultivaluedMap<String, String> form) {
        Fields typed = Fields.shown(form);
        MultivaluedMap<String, String> filled = form;
        Map<String, Map<String, String>> ofServices = new HashMap<>();
        for (int row : typed.rows("line")) {
            String p = "line-" + row + "-";
            String chosen = typed.typed(p + "service");
            String took = typed.typed(p + "took");
            if (!chosen.isEmpty() && !chosen.equals(took)) {
                filled = filled == form ? new MultivaluedHashMap<>(form) : filled;
                Map<String, String> before = took.isEmpty() ? Map.of() : ofServices.computeIfAbsent(took, this::values);
                for (Map.Entry<String, String> value :
                        ofServices.computeIfAbsent(chosen, this::values).entrySet()) {
                    String name = value.getKey();
                    if (isFree(name, filled.getFirst(p + name), before.get(name))) {
                        filled.putSingle(p + name, value.getValue());
                    }
                }
                filled.putSingle(p + "took", chosen);
            }
        }
        return filled;
    }

    /** A new line counts in pieces until something else is chosen. */
    private static boolean isFree(String name, @Nullable String typed, @Nullable String before) {
        return typed == null
                || typed.isBlank()
                || typed.equals(before)
                || (before == null && name.equals("quantityUnit") && typed.equals(Unit.PIECE.code()));
    }

    private Map<String, String> values(String service) {
        ServiceItem serviceItem = catalog.serviceItem(ServiceItemId.of(service));
        return Map.of(
                "serviceLine", serviceItem.serviceLine().toString(),
                "taxCode", serviceItem.taxCode().value(),
                "quantityUnit", serviceItem.unit().code(),
                "description", serviceItem.name());
    }
}
