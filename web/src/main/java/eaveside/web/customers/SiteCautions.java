package eaveside.web.customers;

import static eaveside.customers.SurfaceType.ARRAY;
import static eaveside.customers.SurfaceType.ROOF;
import static eaveside.customers.SurfaceType.SKYLIGHT;

import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.WholeCustomer.WholeSite;
import eaveside.web.View;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * The usual precautions for the surfaces of a site, which go without its own hazards. Which surface calls for which precaution is
 * common practice, no source.
 */
public final class SiteCautions {
    private static final Map<String, Predicate<Surface>> USUAL = new LinkedHashMap<>();

    static {
        USUAL.put(
                "height",
                s -> has(s, SurfaceAttribute.STORY, 2)
                        || s.type() == ROOF
                        || s.type() == SKYLIGHT
                        || (s.type() == ARRAY && !has(s, SurfaceAttribute.GROUND_MOUNT, 1)));
        USUAL.put("electricity", s -> s.type() == ARRAY);
        USUAL.put("glass", s -> s.type() == ARRAY || s.type() == SKYLIGHT);
        USUAL.put("fragile", s -> s.type() == SKYLIGHT || has(s, SurfaceAttribute.FRAGILE_COVERING, 1));
        USUAL.put("chemicals", s -> has(s, SurfaceAttribute.GROWTH_GRADE, 1));
    }

    private SiteCautions() {}

    public static List<String> of(View view, WholeSite at) {
        List<String> cautions = new ArrayList<>();
        USUAL.forEach((caution, calledFor) -> {
            if (at.surfaces().stream().filter(Surface::active).anyMatch(calledFor)) {
                cautions.add(view.t("customers.caution." + caution));
            }
        });
        return List.copyOf(cautions);
    }

    private static boolean has(Surface surface, SurfaceAttribute attribute, int least) {
        return surface.attributes().getOrDefault(attribute, 0) >= least;
    }
}
