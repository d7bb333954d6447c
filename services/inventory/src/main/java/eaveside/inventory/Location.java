package eaveside.inventory;

import eaveside.kernel.LocationId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A store room or a van.
 *
 * @param  technicians who drives with the van; a technician has at most one
 * @param  active      whether goods can still come in
 * @param  version     as read; null for a new location
 */
public record Location(
        LocationId id,
        String name,
        LocationType type,
        List<UserId> technicians,
        boolean active,
        @Nullable Integer version) {
    public Location {
        name = Texts.required("name", name, 100);
        technicians = technicians.stream().distinct().toList();
        if (type == LocationType.STORE && !technicians.isEmpty()) {
            throw new InventoryRefusal.OnlyVansHaveTechnicians(name);
        }
    }

    public static Location store(LocationId id, String name) {
        return new Location(id, name, LocationType.STORE, List.of(), true, null);
    }

    public static Location van(LocationId id, String name, UserId... technicians) {
        return new Location(id, name, LocationType.VAN, List.of(technicians), true, null);
    }
}
