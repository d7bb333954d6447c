package eaveside.customers;

import eaveside.customers.internal.CustomersQueries;
import eaveside.customers.internal.PanelManufacturerRow;
import eaveside.kernel.Id;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.SurfaceId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Reads the limits for washing that manufacturers of solar panels set. */
@Shared
public class ReadPanelManufacturers {
    private final EntityManager entities;
    private final CustomersQueries queries;

    @Inject
    public ReadPanelManufacturers(EntityManager entities, CustomersQueries queries) {
        this.entities = entities;
        this.queries = queries;
    }

    /** By name. */
    @Transactional
    public List<PanelManufacturer> all() {
        return queries.manufacturers().stream()
                .map(PanelManufacturerRow::content)
                .toList();
    }

    @Transactional
    public PanelManufacturer manufacturer(ManufacturerName name) {
        PanelManufacturerRow row = entities.find(PanelManufacturerRow.class, name.value());
        if (row == null) {
            throw new KernelRefusal.NotFound("panel manufacturer", name)
                    .namedBy("panelManufacturer", "Add the manufacturer first");
        }
        return row.content();
    }

    /** The limits that hold for the surface; none where it is no array or its manufacturer is not known. */
    @Transactional
    public Optional<PanelManufacturer> limitsOn(SurfaceId surface) {
        return queries.manufacturersOf(surface.value()).stream()
                .map(PanelManufacturerRow::content)
                .findFirst();
    }

    /**
     * Whether the surface's manufacturer forbids alkaline soap. False says only that no known manufacturer forbids it: the manual on
     * site and the manufacturer have the last word.
     */
    @Transactional
    public boolean alkaliForbiddenOn(SurfaceId surface) {
        return !alkaliForbiddenAmong(List.of(surface)).isEmpty();
    }

    /** Those of the surfaces whose manufacturer forbids alkaline soap. */
    @Transactional
    public Set<SurfaceId> alkaliForbiddenAmong(Collection<SurfaceId> surfaces) {
        return queries.surfacesForbiddingAlkali(surfaces.stream().map(Id::value).toList()).stream()
                .map(SurfaceId::new)
                .collect(Collectors.toUnmodifiableSet());
    }
}
