package eaveside.inventory;

import eaveside.kernel.PlaceId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A store room or a van.
 *
 * @param technicians who drives with the van; a technician has at most one
 * @param active      whether goods can still come in
 * @param version     as read; null for a new place
 */
public record Place(
        PlaceId id,
        String name,
        PlaceKind kind,
        List<UserId> technicians,
        boolean active,
        @Nullable Integer version) {
    public Place {
        name = Texts.required("name", name, 100);
        technicians = technicians.stream().distinct().toList();
        if (kind == PlaceKind.STORE && !technicians.isEmpty()) {
            throw new InventoryRefusal.OnlyVansHaveTechnicians(name);
        }
    }

    public static Place store(PlaceId id, String name) {
        return new Place(id, name, PlaceKind.STORE, List.of(), true, null);
    }

    public static Place van(PlaceId id, String name, UserId... technicians) {
        return new Place(id, name, PlaceKind.VAN, List.of(technicians), true, null);
    }
}
