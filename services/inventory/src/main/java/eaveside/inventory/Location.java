package eaveside.inventory;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.LocationId;
import eaveside.kernel.UserId;
import eaveside.kernel.Versioned;
import java.util.Comparator;
import java.util.List;

/**
 * A store room or a van.
 *
 * @param  technicians who drives with the van; a technician has at most one
 * @param  active      whether goods can still come in
 */
public record Location(
        LocationId id,
        String name,
        LocationType type,
        @Default List<UserId> technicians,
        @Default("true") boolean active,
        @Default("0") int version)
        implements Versioned {
    public Location {
        Check check = new Check();
        name = check.required("name", name, 100);
        // One order, so that equal locations are equal however the rows came back.
        technicians = technicians.stream()
                .distinct()
                .sorted(Comparator.comparing(UserId::value))
                .toList();
        check.that(type == LocationType.VAN || technicians.isEmpty(), InventoryRefusal.OnlyVansHaveTechnicians::new);
        check.done();
    }

    public static Location store(LocationId id, String name) {
        return new Location(id, name, LocationType.STORE, List.of(), true, 0);
    }

    public static Location van(LocationId id, String name, UserId... technicians) {
        return new Location(id, name, LocationType.VAN, List.of(technicians), true, 0);
    }
}
