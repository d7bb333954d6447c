package eaveside.web.invoices;

import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.Unit;
import eaveside.web.forms.Fields;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Fills in what a draft's line takes from the service that is chosen on it: service line, tax, unit and description. What
 * somebody wrote by hand stays; what an earlier choice had filled in gives way ({@code line-0-took} says which that was).
 */
@Dependent
class ServiceOfLine {
    private final Catalog catalog;

    @Inject
    ServiceOfLine(Catalog catalog) {
        this.catalog = catalog;
    }

    /** The form with the values of newly chosen services; the same form where none is new. Refuses an unknown service. */
    MultivaluedMap<String, String> fill(MultivaluedMap<String, String> form) {
        Fields typed = Fields.shown(form);
        MultivaluedMap<String, String> filled = form;
        for (int row : typed.rows("line")) {
            String p = "line-" + row + "-";
            String chosen = typed.typed(p + "service");
            String took = typed.typed(p + "took");
            if (!chosen.isEmpty() && !chosen.equals(took)) {
                if (filled == form) {
                    filled = new MultivaluedHashMap<>(form);
                }
                take(filled, p, values(chosen), took.isEmpty() ? Map.of() : values(took));
                filled.putSingle(p + "took", chosen);
            }
        }
        return filled;
    }

    private static void take(
            MultivaluedMap<String, String> form, String p, Map<String, String> chosen, Map<String, String> before) {
        chosen.forEach((name, value) -> {
            String typed = form.getFirst(p + name);
            if (isFree(name, typed, before.get(name))) {
                form.putSingle(p + name, value);
            }
        });
    }

    /** A new line counts in pieces until something else is chosen. */
    private static boolean isFree(String name, @Nullable String typed, @Nullable String before) {
        return typed == null
                || typed.isBlank()
                || typed.equals(before)
                || (before == null && name.equals("unit") && typed.equals(Unit.PIECE.name()));
    }

    private Map<String, String> values(String service) {
        ServiceItem serviceItem = catalog.serviceItem(ServiceItemId.of(service));
        return Map.of(
                "line", serviceItem.serviceLine().toString(),
                "tax", serviceItem.taxCode().value(),
                "unit", serviceItem.unit().name(),
                "description", serviceItem.name());
    }
}
