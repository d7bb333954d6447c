package eaveside.visits.internal;

import eaveside.catalog.Catalog;
import eaveside.customers.ManufacturerName;
import eaveside.customers.ReadPanelManufacturers;
import eaveside.customers.ReadSurfaces;
import eaveside.inventory.ReadStock;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Shared;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;
import eaveside.visits.SoapWarning;
import eaveside.visits.internal.SheetConsumption.Use;
import eaveside.visits.internal.SoapWarnings.AlkalineSoap;
import eaveside.visits.internal.SoapWarnings.Sensitive;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Looks up what the warnings about alkaline soap need to know, for a plan and for a sheet. */
@Shared
public class SoapCheck {
    private final ReadPanelManufacturers readPanelManufacturers;
    private final ReadSurfaces readSurfaces;
    private final ReadStock readStock;
    private final Catalog catalog;

    @Inject
    public SoapCheck(
            ReadPanelManufacturers readPanelManufacturers,
            ReadSurfaces readSurfaces,
            ReadStock readStock,
            Catalog catalog) {
        this.readPanelManufacturers = readPanelManufacturers;
        this.readSurfaces = readSurfaces;
        this.readStock = readStock;
        this.catalog = catalog;
    }

    /** Work on a surface. */
    private record Location(@Nullable SurfaceId surface, ServiceLineId line) {}

    /** Of what the planned services use by standard, each on its own surface. */
    public List<SoapWarning> ofPlan(List<VisitLineRow> lines) {
        List<Sensitive> sensitive = sensitive(lines.stream()
                .map(line -> new Location(line.surface(), line.serviceLine()))
                .toList());
        List<SoapWarning> warnings = new ArrayList<>();
        for (VisitLineRow line : sensitive.isEmpty() ? List.<VisitLineRow>of() : lines) {
            List<AlkalineSoap> soaps = catalog.serviceItem(line.serviceItem()).consumables().stream()
                    .filter(c -> isAlkaline(c.item()))
                    .map(c -> new AlkalineSoap(c.item(), null))
                    .toList();
            warnings.addAll(SoapWarnings.between(
                    soaps,
                    sensitive.stream()
                            .filter(s -> s.surface().equals(line.surface()))
                            .toList()));
        }
        return warnings.stream().distinct().toList();
    }

    /** Of what was really used on what was really done. */
    public List<SoapWarning> ofSheet(List<Use> uses, List<WorkLine> work) {
        List<AlkalineSoap> soaps = uses.stream()
                .filter(use -> isAlkaline(use.draw().item()))
                .map(use -> new AlkalineSoap(use.draw().item(), use.line()))
                .toList();
        if (soaps.isEmpty()) {
            return List.of();
        }
        return SoapWarnings.between(
                soaps,
                sensitive(work.stream()
                        .filter(WorkLine::isDone)
                        .map(line -> new Location(line.surface(), line.serviceLine()))
                        .toList()));
    }

    private boolean isAlkaline(StockItemId item) {
        return readStock.item(item).alkaline();
    }

    private List<Sensitive> sensitive(List<Location> locations) {
        Set<SurfaceId> forbidding = readPanelManufacturers.alkaliForbiddenAmong(locations.stream()
                .map(Location::surface)
                .filter(Objects::nonNull)
                .toList());
        List<Sensitive> sensitive = new ArrayList<>();
        for (Location location : locations) {
            SurfaceId surface = location.surface();
            if (surface != null && forbidding.contains(surface)) {
                ManufacturerName manufacturer = readSurfaces.surface(surface).panelManufacturer();
                if (manufacturer != null) {
                    sensitive.add(new Sensitive(surface, location.line(), manufacturer));
                }
            }
        }
        return sensitive;
    }
}
