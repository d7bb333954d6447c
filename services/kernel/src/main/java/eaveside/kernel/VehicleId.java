package eaveside.kernel;

import java.util.UUID;

/** Identifies a vehicle. */
public record VehicleId(UUID value) implements Id {
    public static VehicleId next() {
        return new VehicleId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static VehicleId of(String text) {
        return new VehicleId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
