package eaveside.web.customers;

import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceType;
import eaveside.web.View;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * What can hurt at a site: its own hazards first, then the usual precautions for the surfaces there. Which surface calls
 * for which precaution is common practice, no source.
 */
final class SiteCautions {
    private SiteCautions() {}

    static List<String> of(View view, Site site, List<Surface> surfaces) {
        List<Surface> there = surfaces.stream().filter(Surface::active).toList();
        List<String> cautions = new ArrayList<>();
        if (!site.hazards().isEmpty()) {
            cautions.add(site.hazards());
        }
        Predicate<Surface> onTheGround = s -> has(s, SurfaceAttribute.GROUND_MOUNT, 1);
        if (there.stream()
                .anyMatch(s -> has(s, SurfaceAttribute.STORY, 2)
                        || s.type() == SurfaceType.ROOF
                        || s.type() == SurfaceType.SKYLIGHT
                        || (s.type() == SurfaceType.ARRAY && !onTheGround.test(s)))) {
            cautions.add(view.t("customers.caution.height"));
        }
        if (there.stream().anyMatch(s -> s.type() == SurfaceType.ARRAY)) {
            cautions.add(view.t("customers.caution.electricity"));
        }
        if (there.stream().anyMatch(s -> s.type() == SurfaceType.ARRAY || s.type() == SurfaceType.SKYLIGHT)) {
            cautions.add(view.t("customers.caution.glass"));
        }
        if (there.stream()
                .anyMatch(s -> s.type() == SurfaceType.SKYLIGHT || has(s, SurfaceAttribute.FRAGILE_COVERING, 1))) {
            cautions.add(view.t("customers.caution.fragile"));
        }
        if (there.stream().anyMatch(s -> has(s, SurfaceAttribute.GROWTH_GRADE, 1))) {
            cautions.add(view.t("customers.caution.chemicals"));
        }
        return List.copyOf(cautions);
    }

    private static boolean has(Surface surface, SurfaceAttribute attribute, int least) {
        return surface.attributes().getOrDefault(attribute, 0) >= least;
    }
}
