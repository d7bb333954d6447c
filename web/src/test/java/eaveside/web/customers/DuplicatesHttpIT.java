package eaveside.web.customers;

import static eaveside.web.testing.Visitor.location;
import static eaveside.web.testing.Visitor.page;
import static eaveside.web.testing.Visitor.text;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Visitor;
import java.net.http.HttpResponse;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Customers who may be entered twice: by page, by script and by file; our own list as a file; merging two. */
class DuplicatesHttpIT {
    private final Visitor office = Visitor.office();

    private Map<String, String> form(String name, String phone) {
        Map<String, String> form = office.form("customers/new", "/customers/save");
        form.put("name", name);
        form.put("phone", phone);
        form.put("note", "Rings twice, \"always\";\r\n=never on Sundays");
        return form;
    }

    private String saved(String name, String phone) {
        Map<String, String> form = form(name, phone);
        HttpResponse<String> answer = office.post("customers/save", form);
        assertEquals(303, answer.statusCode(), text(answer));
        return form.get("id");
    }

    @Test
    void the_page_shows_who_it_may_be_and_a_way_on() {
        String known = saved("Pebble Known", "(312) 555-0161");
        Map<String, String> form = form("Pebble Again", "+1 312 555 0161");

        HttpResponse<String> refused = office.post("customers/save", form);

        assertEquals(409, refused.statusCode());
        assertEquals(
                1,
                page(refused)
                        .select("main section a[href=/customers/" + known + "]")
                        .size());
        assertTrue(text(refused).contains("Pebble Known same phone"), text(refused));
        assertEquals("true", page(refused).select("#phone").attr("aria-invalid"));
        Map<String, String> back = Visitor.form(refused, "/customers/save");
        form.forEach((name, value) ->
                assertEquals(value.replace("\r\n", "\n"), back.get(name).replace("\r\n", "\n"), name));
        assertEquals("0", Visitor.value("select count(*) from customer where id = ?::uuid", form.get("id")));

        form.put(
                "allowDuplicates",
                page(refused).select("button[name=allowDuplicates]").val());
        assertEquals(303, office.post("customers/save", form).statusCode());
        assertTrue(
                text(office.get("customers/" + form.get("id"))).contains("Pebble Known same phone"),
                "the page goes on saying so");
    }

    @Test
    void scripts_are_told_and_may_say_that_they_mean_it() {
        String known = saved("Scripted Known", "312 555 0162");
        String path = "api/customers/" + UUID.randomUUID();
        String body = "{\"name\":\"Scripted Again\",\"type\":\"BUSINESS\",\"paymentTermDays\":30,"
                + "\"phone\":\"312-555-0162\",\"address\":{\"country\":\"US\"}}";

        HttpResponse<String> refused = office.json("PUT", path, body);

        assertEquals(409, refused.statusCode());
        assertTrue(refused.body().contains("\"urn:eaveside:refusal:customers.possible-duplicate\""), refused.body());
        assertTrue(
                refused.body().contains("\"id\":\"" + known + "\"")
                        && refused.body().contains("PHONE"),
                refused.body());
        assertEquals(400, office.json("PUT", path + "?duplicates=perhaps", body).statusCode());
        HttpResponse<String> stored = office.json("PUT", path + "?duplicates=allow", body);
        assertEquals(200, stored.statusCode());
        assertEquals(stored.body(), office.json("PUT", path, body).body(), "once stored, the same again is a retry");
    }

    @Test
    void our_own_list_can_be_imported_and_changes_nothing() {
        saved("=Roundtrip Plus Gate", "+1 (312) 555-0163");
        saved("Roundtrip, \"Quoted\" & Sons", "312 555 0164");
        String list = office.get("customers/list.csv?q=roundtrip").body();
        String customers = Visitor.value("select count(*) || ' ' || max(changed_at) from customer");

        HttpResponse<String> tried = office.upload("customers/import", "file", "customers.csv", list);

        assertEquals(200, tried.statusCode());
        assertTrue(text(tried).contains("2 rows with no customers"), text(tried));
        assertTrue(text(tried).contains("2 customers are already here and unchanged"), text(tried));
        assertTrue(text(tried).contains("There is nothing new to import"), text(tried));
        HttpResponse<String> run = office.csv("api/customers/import", list);
        assertEquals(200, run.statusCode(), run.body());
        assertTrue(run.body().contains("\"customers\":0") && run.body().contains("\"unchanged\":2"), run.body());
        assertEquals(customers, Visitor.value("select count(*) || ' ' || max(changed_at) from customer"));

        // Elsewhere it brings the same customers in: their names are changed here, so that they are others.
        String elsewhere = list.replace("Roundtrip", "Elsewhere")
                .replace("555-016", "555-117")
                .replace("555 016", "555 117");
        assertEquals(200, office.csv("api/customers/import", elsewhere).statusCode());
        assertEquals(
                list.replace("Roundtrip", "").replaceAll("555.016", ""),
                office.get("customers/list.csv?q=elsewhere")
                        .body()
                        .replace("Elsewhere", "")
                        .replaceAll("555.117", ""));
    }

    @Test
    void a_file_names_who_may_be_here_already_and_comes_in_when_that_is_meant() {
        String known = saved("Filed Known", "312 555 0165");
        String file = "customer,country,phone\nFiled Again,US,(312) 555-0165\nFiled Beside,US,(312) 555-0166\n";

        HttpResponse<String> tried = office.upload("customers/import", "file", "customers.csv", file);
        assertTrue(text(tried).contains("One new customer may be a duplicate"), text(tried));
        assertEquals(
                1, page(tried).select("td a[href=/customers/" + known + "]").size());
        Map<String, String> run = Visitor.form(tried, "/customers/import/run");
        HttpResponse<String> refused = office.post("customers/import/run", run);
        assertEquals(409, refused.statusCode());
        assertEquals("0", Visitor.value("select count(*) from customer where name like 'Filed A%'"));
        HttpResponse<String> script = office.csv("api/customers/import", file);
        assertEquals(409, script.statusCode());
        assertTrue(script.body().contains("\"otherName\":\"Filed Known\""), script.body());

        Map<String, String> meant = Visitor.form(refused, "/customers/import/run");
        meant.put("allowDuplicates", "yes");
        assertEquals("/customers?done=customers.imported", location(office.post("customers/import/run", meant)));
        assertEquals("1", Visitor.value("select count(*) from customer where name = 'Filed Again'"));
    }

    @Test
    void rows_are_counted_as_rows() {
        String file =
                "customer;country;phone;city\r\n\"Rows\r\nand rows\";US;;A\r\n\"Rows\r\nand rows\";US;1;B\r\n\r\n";
        HttpResponse<String> tried = office.upload("customers/import", "file", "two.csv", file);
        assertTrue(text(tried).contains("2 rows with one customer"), text(tried));
        assertTrue(text(tried).contains("One row cannot be imported"), text(tried));
        assertEquals(2, page(tried).select("section.panel tbody tr").size(), "though it is wrong in two ways");
    }

    @Test
    void two_are_merged_into_the_one_that_is_kept() {
        String kept = saved("Merge Keeper", "312 555 0167");
        Map<String, String> twin = form("Merge Goer", "312 555 0167");
        twin.put("allowDuplicates", "yes");
        assertEquals(303, office.post("customers/save", twin).statusCode());
        String goer = twin.get("id");

        HttpResponse<String> page = office.get("customers/" + kept);
        String merge = page(page)
                .select("main section a[href^=/customers/" + goer + "/merge]")
                .attr("href");
        HttpResponse<String> confirm = office.get(merge.substring(1));
        assertTrue(text(confirm).contains("Merge Goer") && text(confirm).contains("Merge Keeper"), text(confirm));
        Map<String, String> form = Visitor.form(confirm, "/customers/" + goer + "/merge");
        String path = "customers/" + goer + "/merge";
        HttpResponse<String> merged = office.post(path, form);
        assertEquals("/customers/" + kept + "?done=customers.merged", location(merged), text(merged));
        assertEquals(303, office.post(path, form).statusCode(), "the same again is a retry");

        assertEquals("/customers/" + kept, location(office.get("customers/" + goer)));
        assertTrue(office.getJson("api/customers/" + goer).body().contains("Merge Keeper"));
        assertEquals(
                1,
                page(office.get("customers?q=merge&all=yes"))
                        .select("#found tbody tr")
                        .size());
        assertEquals(
                "1",
                Visitor.value(
                        "select count(distinct subject) from audit_event where action = 'customer.merge' and subject = ?",
                        goer + " into " + kept));
        assertEquals(
                409,
                office.json(
                                "POST",
                                "api/customers/" + goer + "/merge",
                                "{\"into\":\"" + saved("Merge Other", "") + "\"}")
                        .statusCode());
        assertEquals(
                422,
                office.json("POST", "api/customers/" + kept + "/merge", "{\"into\":\"" + kept + "\"}")
                        .statusCode());
        assertEquals(403, Visitor.technician().get(path).statusCode());
    }
}
