package eaveside.visits.internal;

import eaveside.customers.ManufacturerName;
import eaveside.kernel.Decision;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;
import eaveside.visits.SoapWarning;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Which alkaline soaps met modules whose manufacturer forbids alkali. */
@Decision
final class SoapWarnings {
    private SoapWarnings() {}

    /** @param  line that it was used for; absent where it may have been used on any of the work */
    public record AlkalineSoap(StockItemId item, @Nullable ServiceLineId line) {}

    /** A surface worked on whose panel manufacturer forbids alkali. */
    public record Sensitive(SurfaceId surface, ServiceLineId line, ManufacturerName manufacturer) {}

    /** One warning per soap and surface. */
    public static List<SoapWarning> between(List<AlkalineSoap> soaps, List<Sensitive> surfaces) {
        Set<SoapWarning> warnings = new LinkedHashSet<>();
        for (AlkalineSoap soap : soaps) {
            for (Sensitive surface : surfaces) {
                if (soap.line() == null || soap.line().equals(surface.line())) {
                    warnings.add(new SoapWarning(soap.item(), surface.surface(), surface.manufacturer()));
                }
            }
        }
        return List.copyOf(warnings);
    }
}
