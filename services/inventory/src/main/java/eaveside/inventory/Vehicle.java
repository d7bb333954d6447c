package eaveside.inventory;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.VehicleId;
import eaveside.kernel.Versioned;
import jakarta.persistence.Embeddable;

/**
 * A vehicle that crews drive.
 *
 * @param  licensePlate as it is written on it; may be empty
 * @param  active       false once it is sold
 */
@Embeddable
public record Vehicle(
        VehicleId id,
        String name,
        @Default String licensePlate,
        @Default String note,
        @Default("true") boolean active,
        @Default("0") int version)
        implements Versioned {
    public Vehicle {
        Check check = new Check();
        name = check.required("name", name, 100);
        licensePlate = check.optional("licensePlate", licensePlate, 20);
        note = check.optional("note", note, 500);
        check.done();
    }
}
