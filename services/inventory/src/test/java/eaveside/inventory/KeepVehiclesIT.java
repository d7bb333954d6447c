package eaveside.inventory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.UserId;
import eaveside.kernel.VehicleId;
import eaveside.testing.Bench;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class KeepVehiclesIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static final UserId BY = UserId.next();

    @BeforeAll
    static void hire() {
        bench.execute(
                "insert into app_user (id, username, name, role, password_hash)"
                        + " values (?, 'office.vehicles', 'Office', 'OFFICE', '$argon2id$v=19$m=1,t=1,p=1$x$x')",
                BY.value());
    }

    private static KeepVehicles keep() {
        return bench.get(KeepVehicles.class);
    }

    private static Vehicle vehicle(VehicleId id, String name, int version) {
        return new Vehicle(id, name, "TEST 01", "", true, version);
    }

    @Test
    void a_vehicle_is_kept_and_changed_with_its_audit_line() {
        VehicleId id = VehicleId.next();

        Vehicle first = keep().save(vehicle(id, "Long van", 0), BY);
        Vehicle again = keep().save(vehicle(id, "Long van", 0), BY);
        Vehicle changed = keep().save(vehicle(id, "Longest van", 1), BY);

        assertEquals(1, first.version());
        assertEquals(first, again, "the same again is a retry");
        assertEquals(2, changed.version());
        assertEquals(changed, keep().vehicle(id));
        assertEquals(2L, bench.value("select count(*) from audit_event where subject = ?", id.toString()));
        assertEquals(
                1L,
                bench.value(
                        "select count(*) from audit_event a join vehicle v on a.subject = v.id::text and a.xmin = v.xmin"
                                + " where v.id = ?",
                        id.value()),
                "the line is written in the transaction of the deed");
    }

    @Test
    void whoever_saves_second_is_refused_with_both_contents() {
        VehicleId id = VehicleId.next();
        keep().save(vehicle(id, "Short van", 0), BY);
        Vehicle theirs = keep().save(vehicle(id, "Shorter van", 1), BY);

        var refusal = assertThrows(KernelRefusal.Stale.class, () -> keep().save(vehicle(id, "Shortest van", 1), BY));

        assertEquals("vehicle.stale", refusal.code());
        assertEquals(theirs, refusal.theirs());
        assertEquals(List.of("name"), refusal.fields());
        assertThrows(KernelRefusal.NotFound.class, () -> keep().save(vehicle(VehicleId.next(), "Ghost", 3), BY));
    }

    @Test
    void two_at_once_on_a_new_id_are_one() throws Exception {
        VehicleId id = VehicleId.next();
        Callable<Vehicle> save = () -> keep().save(vehicle(id, "Twin van", 0), BY);
        try (ExecutorService both = Executors.newFixedThreadPool(2)) {
            for (Future<Vehicle> saved : both.invokeAll(List.of(save, save))) {
                assertEquals(1, saved.get().version());
            }
        }
        assertEquals(1L, bench.value("select count(*) from audit_event where subject = ?", id.toString()));
    }

    @Test
    void a_name_is_given_once() {
        keep().save(vehicle(VehicleId.next(), "Only van", 0), BY);

        assertThrows(KernelRefusal.Taken.class, () -> keep().save(vehicle(VehicleId.next(), "Only van", 0), BY));
    }
}
