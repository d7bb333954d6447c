package eaveside.web.customers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Visitor;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.StringReader;
import java.net.http.HttpResponse;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Contacts and the import of customers for scripts, on the real server. */
class CustomersApiHttpIT {
    private static final String HEADER = "customer;country;site;surface;surface_type;extent\n";

    private final Visitor office = Visitor.office();

    private static JsonObject json(HttpResponse<String> answer, int status) {
        assertEquals(status, answer.statusCode(), answer.body());
        return Json.createReader(new StringReader(answer.body())).readObject();
    }

    private String customer(String name) {
        String path = "api/customers/" + UUID.randomUUID();
        json(
                office.json(
                        "PUT",
                        path,
                        "{\"name\":\"" + name + "\",\"type\":\"BUSINESS\",\"paymentTermDays\":30,"
                                + "\"address\":{\"country\":\"US\"}}"),
                200);
        return path;
    }

    @Test
    void a_contact_is_kept_under_the_scripts_own_id() {
        String customer = customer("Contacted Ltd");
        String path = customer + "/contacts/" + UUID.randomUUID();
        String body = """
                {"name": "Jory Wick", "role": "caretaker", "email": "jory@example.com", "phone": "555-0123"}""";

        JsonObject first = json(office.json("PUT", path, body), 200);
        assertEquals("caretaker", first.getString("role"));
        assertTrue(first.getBoolean("active"));
        assertEquals(first, json(office.json("PUT", path, body), 200), "the same again changes nothing");

        JsonObject overtaken = json(office.json("PUT", path, body.replace("555-0123", "555-0124")), 409);
        assertEquals("555-0123", overtaken.getJsonObject("stored").getString("phone"));
        assertEquals("555-0124", overtaken.getJsonObject("sent").getString("phone"));
        String changed =
                body.replace("555-0123", "555-0124").replace("{", "{\"version\": " + first.getInt("version") + ", ");
        assertEquals("555-0124", json(office.json("PUT", path, changed), 200).getString("phone"));

        JsonObject shown =
                json(office.getJson(customer), 200).getJsonArray("contacts").getJsonObject(0);
        assertEquals("Jory Wick", shown.getString("name"));
        assertEquals("555-0124", shown.getString("phone"));
    }

    @Test
    void a_contact_that_cannot_be_is_refused() {
        String customer = customer("Uncontacted Ltd");
        String path = customer + "/contacts/" + UUID.randomUUID();
        String body = "{\"name\": \"Nobody\"}";

        json(office.json("PUT", path, "{}"), 400);
        json(office.json("PUT", path, "{\"name\": \"Nobody\", \"email\": \"no mail\"}"), 422);
        json(office.json("PUT", "api/customers/" + UUID.randomUUID() + "/contacts/" + UUID.randomUUID(), body), 404);
        json(office.json("PUT", path, "{\"name\": \"Nobody\", \"version\": 7}"), 404);
        json(Visitor.technician().json("PUT", path, body), 403);
        assertEquals(
                0, json(office.getJson(customer), 200).getJsonArray("contacts").size());

        json(office.json("PUT", path, body), 200);
        String others = customer("Other Contacts Ltd") + path.substring(path.indexOf("/contacts/"));
        json(office.json("PUT", others, "{\"name\": \"Nobody\", \"version\": 1}"), 422);
    }

    @Test
    void a_file_is_tried_out_and_comes_in_once() {
        String name = "Scripted Import " + UUID.randomUUID();
        String file = HEADER + name + ";US;Home;Front;window;12\n" + name + ";US;Home;Back;window;3\n";
        String count = "select count(*) from customer where name = ?";

        JsonObject tried = json(office.csv("api/customers/import?dryRun=true", file), 200);
        assertTrue(tried.getBoolean("dryRun"));
        assertEquals(2, tried.getInt("rows"));
        assertEquals(1, tried.getInt("customers"));
        assertEquals(0, tried.getJsonArray("badRows").size());
        assertEquals("0", Visitor.value(count, name), "a dry run stores nothing");
        json(Visitor.technician().csv("api/customers/import", file), 403);
        json(office.csv("api/customers/import?dryRun=yes", file), 400);
        assertEquals("0", Visitor.value(count, name), "neither does one that was misspelt");

        JsonObject done = json(office.csv("api/customers/import", file), 200);
        assertEquals(2, done.getInt("surfaces"));
        assertEquals("1", Visitor.value(count, name));
        JsonObject again = json(office.csv("api/customers/import", file), 200);
        assertTrue(again.containsKey("importedBefore"), again.toString());
        assertEquals("1", Visitor.value(count, name), "the same file again changes nothing");
    }

    @Test
    void one_bad_row_keeps_the_whole_file_out() {
        String name = "Half Good " + UUID.randomUUID();
        String file = HEADER + name + ";US;Home;Front;window;12\n" + name + ";US;Home;Roof;roof;many\n;US;Home;;;\n";

        JsonObject tried = json(office.csv("api/customers/import?dryRun=true", file), 200);
        assertEquals(2, tried.getJsonArray("badRows").size());
        JsonObject refused = json(office.csv("api/customers/import", file), 422);
        assertEquals(3, refused.getInt("rows"));
        JsonObject bad = refused.getJsonArray("badRows").getJsonObject(0);
        assertEquals(3, bad.getInt("line"));
        assertTrue(bad.getString("reason").contains("many"), bad.getString("reason"));
        assertEquals(tried.getJsonArray("badRows"), refused.getJsonArray("badRows"));
        assertEquals("0", Visitor.value("select count(*) from customer where name = ?", name));
        json(office.csv("api/customers/import", "\u0000\u0001 no table"), 422);
        json(office.csv("api/customers/import", ""), 422);
    }
}
