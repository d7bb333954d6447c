package eaveside.web.vehicles;

import static eaveside.web.testing.Visitor.page;
import static eaveside.web.testing.Visitor.text;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.net.http.HttpResponse;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Duration;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;

class VehiclesHttpIT {
    private final Visitor office = Visitor.office();

    private Map<String, String> fresh(String name) {
        Map<String, String> form = office.form("vehicles/new", "/vehicles");
        form.put("name", name);
        form.put("licensePlate", "TEST 01");
        return form;
    }

    @Test
    void a_vehicle_is_added_listed_and_taken_along_as_a_file() {
        Map<String, String> form = fresh("Ladder van");

        assertEquals(303, office.post("vehicles", form).statusCode());
        assertEquals(303, office.post("vehicles", form).statusCode(), "the same again is a retry");

        var list = office.get("vehicles?done=vehicles.saved");
        assertTrue(text(list).contains("The vehicle is saved."), text(list));
        assertEquals(
                "/vehicles/" + form.get("id"),
                page(list).select("a:containsOwn(Ladder van)").attr("href"));
        var file = office.get("vehicles/list.csv");
        assertEquals(200, file.statusCode());
        assertTrue(file.body().contains("Name,License plate,Note,Active"), file.body());
        assertTrue(file.body().contains("Ladder van,TEST 01,,Yes"), file.body());
        var spreadsheet = office.get("vehicles/list.xlsx");
        assertEquals(200, spreadsheet.statusCode());
        assertEquals(
                "attachment; filename=\"vehicles.xlsx\"",
                spreadsheet.headers().firstValue("content-disposition").orElse(""));
        assertEquals(
                "1",
                Visitor.value(
                        "select count(*) from audit_event a join vehicle v on v.id::text = a.subject and v.xmin = a.xmin"
                                + " where v.name = ?",
                        "Ladder van"),
                "the line on the audit log is written in the transaction of the deed");
    }

    @Test
    void everything_wrong_is_said_at_once_in_the_words_of_the_labels() {
        Map<String, String> form = fresh("");
        form.put("licensePlate", "much longer than any license plate is");

        var refused = office.post("vehicles", form);

        assertEquals(422, refused.statusCode());
        assertEquals("Name is required", page(refused).select("#name-error").text());
        assertTrue(page(refused).title().startsWith("Error:"), page(refused).title());
        assertEquals(
                "much longer than any license plate is",
                page(refused).select("#licensePlate").val());
    }

    @Test
    void the_slower_of_two_sees_both_versions() {
        Map<String, String> form = fresh("Short van");
        office.post("vehicles", form);
        Map<String, String> one = office.form("vehicles/" + form.get("id"), "/vehicles");
        Map<String, String> other = office.form("vehicles/" + form.get("id"), "/vehicles");
        one.put("licensePlate", "TEST 02");
        other.put("licensePlate", "TEST 03");
        assertEquals(303, office.post("vehicles", one).statusCode());

        var answer = office.post("vehicles", other);

        assertEquals(409, answer.statusCode());
        assertTrue(text(answer).contains("License plate TEST 02 TEST 03"), text(answer));
        assertEquals(
                303, office.post("vehicles", Visitor.form(answer, "/vehicles")).statusCode());
    }

    @Test
    void what_is_not_there_is_not_found_and_technicians_stay_out() {
        assertEquals(404, office.get("vehicles/" + UUID.randomUUID()).statusCode());
        assertEquals(404, office.get("vehicles/no-id").statusCode());
        assertEquals(403, Visitor.technician().get("vehicles").statusCode());
    }

    /** Both looked for the name before either had saved it, so that only the database can tell. */
    @Test
    void of_two_at_once_with_one_name_the_second_is_told_at_the_field() throws Exception {
        Map<String, String> form = fresh("Twin van");
        try (ExecutorService second = Executors.newSingleThreadExecutor();
                Connection first = Server.shared().database().asOwner().getConnection()) {
            first.setAutoCommit(false);
            try (Statement insert = first.createStatement()) {
                insert.execute(
                        "insert into vehicle (id, name, license_plate, note, active, version, changed_at, changed_by)"
                                + " select gen_random_uuid(), 'Twin van', '', '', true, 1, now(), id from app_user limit 1");
            }
            Future<HttpResponse<String>> waiting = second.submit(() -> office.post("vehicles", form));
            awaitRival();
            first.commit();

            HttpResponse<String> answer = waiting.get(1, TimeUnit.MINUTES);

            assertEquals(409, answer.statusCode(), answer.body());
            assertEquals(
                    "Name was taken by another user. Enter another one",
                    page(answer).select("#name-error").text());
            assertEquals("Twin van", page(answer).select("#name").val());
        }
    }

    private static void awaitRival() {
        long deadline = System.nanoTime() + Duration.ofMinutes(1).toNanos();
        while (Visitor.value("select count(*) from pg_locks where not granted and pid in"
                        + " (select pid from pg_stat_activity where datname = current_database())")
                .equals("0")) {
            assertTrue(System.nanoTime() < deadline, "the second waits for nobody");
            LockSupport.parkNanos(Duration.ofMillis(20).toNanos());
        }
    }
}
