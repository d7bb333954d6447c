package eaveside.customers;

import eaveside.customers.internal.CustomersQueries;
import eaveside.customers.internal.ModuleMakerRow;
import eaveside.kernel.Id;
import eaveside.kernel.SurfaceId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Reads the limits for washing that makers of solar modules set. */
@Dependent
public class ReadModuleMakers {
    private final EntityManager entities;
    private final CustomersQueries queries;

    @Inject
    public ReadModuleMakers(EntityManager entities, CustomersQueries queries) {
        this.entities = entities;
        this.queries = queries;
    }

    /** By name. */
    @Transactional
    public List<ModuleMaker> all() {
        return queries.makers().stream().map(ModuleMakerRow::content).toList();
    }

    @Transactional
    public ModuleMaker maker(MakerName name) {
        ModuleMakerRow row = entities.find(ModuleMakerRow.class, name.value());
        if (row == null) {
            throw new CustomersRefusal.NoSuchMaker(name);
        }
        return row.content();
    }

    /** The limits that hold for the surface; none where it is no array or its maker is not known. */
    @Transactional
    public Optional<ModuleMaker> limitsOn(SurfaceId surface) {
        return queries.makersOf(surface.value()).stream()
                .map(ModuleMakerRow::content)
                .findFirst();
    }

    /**
     * Whether the surface's maker forbids alkaline soap. False says only that no known maker forbids it: the manual on
     * site and the maker have the last word.
     */
    @Transactional
    public boolean alkaliForbiddenOn(SurfaceId surface) {
        return !alkaliForbiddenAmong(List.of(surface)).isEmpty();
    }

    /** Those of the surfaces whose maker forbids alkaline soap. */
    @Transactional
    public Set<SurfaceId> alkaliForbiddenAmong(Collection<SurfaceId> surfaces) {
        return queries.surfacesForbiddingAlkali(surfaces.stream().map(Id::value).toList()).stream()
                .map(SurfaceId::new)
                .collect(Collectors.toUnmodifiableSet());
    }
}
