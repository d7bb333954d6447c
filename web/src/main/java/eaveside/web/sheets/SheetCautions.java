package eaveside.web.sheets;

import eaveside.catalog.ServiceItem;
import eaveside.customers.PanelManufacturer;
import eaveside.customers.ReadPanelManufacturers;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceType;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.visits.SoapWarning;
import eaveside.visits.Visit;
import eaveside.web.Names;
import eaveside.web.View;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a crew should read before it starts. Where a service has no cautions of its own, the usual precautions for the
 * type of surface stand in (common practice, no source).
 */
@Shared
class SheetCautions {
    @Inject
    ReadPanelManufacturers readPanelManufacturers;

    @Inject
    Names names;

    List<String> of(Visit visit, Site site, Known known, View view) {
        Set<String> cautions = new LinkedHashSet<>();
        if (!site.hazards().isEmpty()) {
            cautions.add(view.t("sheets.caution.hazards", site.hazards()));
        }
        for (SoapWarning warning : visit.warnings()) {
            cautions.add(view.t(
                    "sheets.caution.soap",
                    names.item(warning.soap()),
                    names.surface(warning.surface()),
                    warning.manufacturer().value()));
        }
        Set<SurfaceType> types = EnumSet.noneOf(SurfaceType.class);
        for (Visit.Line line : visit.lines()) {
            ServiceItem item = known.serviceItems().get(line.serviceItem().toString());
            String own = item == null ? "" : item.cautions();
            if (!own.isEmpty()) {
                cautions.add(own);
            }
            Surface surface = known.surfaces().get(String.valueOf(line.surface()));
            if (surface != null) {
                if (own.isEmpty()) {
                    types.add(surface.type());
                }
                readPanelManufacturers
                        .limitsOn(surface.id())
                        .ifPresent(manufacturer -> cautions.add(limits(manufacturer, surface, view)));
            }
        }
        types.forEach(type -> cautions.add(view.t("sheets.caution", type)));
        return List.copyOf(cautions);
    }

    private static String limits(PanelManufacturer manufacturer, Surface surface, View view) {
        List<String> limits = new ArrayList<>();
        add(limits, view, "sheets.limit.hardness", manufacturer.maxHardness());
        add(limits, view, "sheets.limit.pressure", manufacturer.maxPressure());
        add(limits, view, "sheets.limit.temperatureDifference", manufacturer.maxTemperatureDifference());
        if (manufacturer.alkaliForbidden()) {
            limits.add(view.t("sheets.limit.alkali"));
        }
        String name = manufacturer.name().value();
        return limits.isEmpty()
                ? view.t("sheets.limits.none", surface.name(), name)
                : view.t("sheets.limits", surface.name(), name, String.join(", ", limits), manufacturer.source());
    }

    private static void add(List<String> limits, View view, String key, @Nullable Quantity limit) {
        if (limit != null) {
            limits.add(view.t(key, view.quantity(limit)));
        }
    }
}
