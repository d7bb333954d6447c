package eaveside.inventory;

import eaveside.kernel.Id;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Decides between rivals who change one record. */
final class Versions {
    private Versions() {}

    /** Refuses a new record under an id that is taken, and a change to anything but the stored version. */
    static void require(@Nullable Integer read, int stored, Id id, String name) {
        if (read == null) {
            throw new InventoryRefusal.IdTaken(id.toString(), name);
        }
        if (!Objects.equals(read, stored)) {
            throw new InventoryRefusal.Stale(name);
        }
    }
}
