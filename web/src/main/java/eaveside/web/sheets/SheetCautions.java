package eaveside.web.sheets;

import eaveside.customers.ModuleMaker;
import eaveside.customers.ReadModuleMakers;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceKind;
import eaveside.kernel.OfferingId;
import eaveside.kernel.Quantity;
import eaveside.kernel.SurfaceId;
import eaveside.offerings.Offering;
import eaveside.visits.Visit;
import eaveside.web.View;
import eaveside.web.visits.SheetFacts;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a crew should read before it starts. Where an offering has no cautions of its own, the usual precautions for the
 * kind of surface stand in (common practice, no source).
 */
@Dependent
class SheetCautions {
    private final ReadModuleMakers readModuleMakers;
    private final SheetFacts sheetFacts;

    @Inject
    SheetCautions(ReadModuleMakers readModuleMakers, SheetFacts sheetFacts) {
        this.readModuleMakers = readModuleMakers;
        this.sheetFacts = sheetFacts;
    }

    List<String> of(
            Visit visit, Site site, Map<OfferingId, Offering> offerings, Map<SurfaceId, Surface> surfaces, View view) {
        Set<String> cautions = new LinkedHashSet<>();
        if (!site.hazards().isEmpty()) {
            cautions.add(view.t("sheets.caution.hazards", site.hazards()));
        }
        for (List<String> soap : sheetFacts.soap(visit.warnings())) {
            cautions.add(view.t("sheets.caution.soap", soap.toArray()));
        }
        Set<SurfaceKind> kinds = EnumSet.noneOf(SurfaceKind.class);
        for (Visit.Line line : visit.lines()) {
            Offering offering = offerings.get(line.offering());
            String own = offering == null ? "" : offering.cautions();
            if (!own.isEmpty()) {
                cautions.add(own);
            }
            Surface surface = line.surface() == null ? null : surfaces.get(line.surface());
            if (surface != null) {
                if (own.isEmpty()) {
                    kinds.add(surface.kind());
                }
                readModuleMakers.limitsOn(surface.id()).ifPresent(maker -> cautions.add(limits(maker, surface, view)));
            }
        }
        kinds.forEach(kind -> cautions.add(view.t("sheets.caution", kind)));
        return List.copyOf(cautions);
    }

    private static String limits(ModuleMaker maker, Surface surface, View view) {
        List<String> limits = new ArrayList<>();
        add(limits, view, "sheets.limit.hardness", maker.maxHardness());
        add(limits, view, "sheets.limit.pressure", maker.maxPressure());
        add(limits, view, "sheets.limit.difference", maker.maxDifference());
        if (maker.alkaliForbidden()) {
            limits.add(view.t("sheets.limit.alkali"));
        }
        return limits.isEmpty()
                ? view.t("sheets.limits.none", surface.name(), maker.name().value())
                : view.t(
                        "sheets.limits",
                        surface.name(),
                        maker.name().value(),
                        String.join("; ", limits),
                        maker.source());
    }

    private static void add(List<String> limits, View view, String key, @Nullable Quantity limit) {
        if (limit != null) {
            limits.add(view.t(key, view.quantity(limit)));
        }
    }
}
