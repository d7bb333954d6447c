package eaveside.web.settings;

import static eaveside.web.testing.Visitor.location;
import static eaveside.web.testing.Visitor.page;
import static eaveside.web.testing.Visitor.text;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.net.URLEncoder;
import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** What the owner and the office set, over HTTP on the real server. */
class SettingsHttpIT {
    private final Visitor owner = Visitor.owner();
    private final Visitor office = Visitor.office();

    private static LocalDate tomorrow() {
        return LocalDate.parse(SiteToQuote.today()).plusDays(1);
    }

    private void saved(String path, Map<String, String> form) {
        var answer = owner.post(path, form);
        assertEquals(303, answer.statusCode(), text(answer));
    }

    @Test
    void the_company_changes_but_its_currency_does_not() {
        Map<String, String> form = owner.form("settings/company", "/settings/company");
        Map<String, String> slower = owner.form("settings/company", "/settings/company");
        form.put("phone", "555-0177");
        form.put("currency", "EUR");
        saved("settings/company", form);

        var shown = owner.get("settings/company");
        assertEquals("555-0177", page(shown).select("#phone").val());
        assertTrue(text(shown).contains("USD Fixed since the books were opened"), text(shown));
        slower.put("phone", "555-0188");
        var overtaken = owner.post("settings/company", slower);
        assertEquals(409, overtaken.statusCode());
        assertTrue(text(overtaken).contains("Phone 555-0177 555-0188"), text(overtaken));
        slower.put("zone", "Mars/Olympus");
        slower.put("country", "Gutterland");
        var refused = owner.post("settings/company", slower);
        assertEquals(422, refused.statusCode());
        assertEquals(
                List.of("Country must be a country code of ISO 3166-1, such as US"),
                page(refused).select(".errors li").eachText());
        assertEquals("Mars/Olympus", page(refused).select("#zone").val());
    }

    @Test
    void the_range_is_kept_by_the_office() {
        Map<String, String> tax = owner.form("settings/taxes/new", "/settings/taxes");
        tax.putAll(Map.of("code", "T-RANGE", "rate", "7.5"));
        saved("settings/taxes", tax);
        Map<String, String> line = office.form("settings/service-lines/new", "/settings/service-lines");
        line.putAll(Map.of("code", "T-LINE", "name", "Lines of the tests"));
        assertEquals(303, office.post("settings/service-lines", line).statusCode());
        Map<String, String> serviceItem = office.form("settings/services/new", "/settings/services");
        serviceItem.putAll(Map.of(
                "code", "t-off",
                "name", "Service of the tests",
                "serviceLine", line.get("id"),
                "minutesPerUnit", "1.5",
                "taxCode", "T-RANGE",
                "cautions", "Wet steps"));
        var refused = office.post("settings/services", serviceItem);
        assertEquals(422, refused.statusCode());
        assertEquals("true", page(refused).select("#code").attr("aria-invalid"));
        assertEquals("Wet steps", page(refused).select("#cautions").val());
        serviceItem.put("code", "T-OFF");
        assertEquals(
                "/settings/services?done=settings.services.saved",
                location(office.post("settings/services", serviceItem)));

        Map<String, String> twin = new HashMap<>(serviceItem);
        twin.put("id", UUID.randomUUID().toString());
        assertEquals(409, office.post("settings/services", twin).statusCode(), "the code is taken");
        String list = text(office.get("settings/services"));
        assertTrue(list.contains("T-OFF Service of the tests piece 1.5 T-RANGE 0 Lines of the tests Yes"), list);
        assertTrue(office.get("settings/services/list.csv").body().contains("T-OFF"));
        var read = office.getJson("api/services/" + serviceItem.get("id"));
        assertTrue(read.body().contains("\"code\":\"T-OFF\""), read.body());
        assertEquals(
                409,
                office.json(
                                "PUT",
                                "api/services/" + serviceItem.get("id"),
                                read.body()
                                        .replace("\"version\":1", "\"version\":0")
                                        .replace("1.5", "2"))
                        .statusCode());
        assertEquals(
                200,
                office.json(
                                "PUT",
                                "api/services/" + serviceItem.get("id"),
                                read.body().replace("1.5", "2"))
                        .statusCode());
    }

    @Test
    void taxes_are_dated_and_to_be_confirmed_locally() {
        Map<String, String> form = owner.form("settings/taxes/new", "/settings/taxes");
        form.putAll(Map.of("code", "T-DATED", "rate", "6", "from", "2026-01-01"));
        saved("settings/taxes", form);
        form.putAll(Map.of("rate", "7", "from", "2026-02-01"));

        var past = owner.post("settings/taxes", form);

        assertEquals(422, past.statusCode());
        assertEquals("true", page(past).select("#from").attr("aria-invalid"));
        assertEquals("7", page(past).select("#rate").val());
        form.put("from", tomorrow().toString());
        saved("settings/taxes", form);
        String shown = text(owner.get("settings/taxes"));
        assertTrue(shown.contains("Confirm each setting with the local tax authority"), shown);
        assertTrue(shown.matches(".*T-DATED S · standard rate 7 ?% \\S+ \\S+ \\S+ Upcoming.*"), shown);
        form.putAll(Map.of("code", "T-EXEMPT", "category", "E", "rate", ""));
        var noReason = owner.post("settings/taxes", form);
        assertEquals("true", page(noReason).select("#exemptionReason").attr("aria-invalid"));
    }

    @Test
    void rates_are_the_owners_alone() {
        Map<String, String> form = owner.form("settings/rates/new", "/settings/rates");
        form.putAll(Map.of(
                "from", "2026-01-01", "laborPerHour", "32", "travelPerDistance", "0.70", "overheadPerHour", "14"));
        saved("settings/rates", form);
        form.putAll(Map.of("from", tomorrow().toString(), "laborPerHour", "33.50"));
        saved("settings/rates", form);
        assertTrue(text(owner.get("settings/rates")).contains("$33.50"));
        form.put("laborPerHour", "dear");
        assertEquals(422, owner.post("settings/rates", form).statusCode());

        for (String path : List.of(
                "settings/rates",
                "settings/taxes",
                "settings/company",
                "settings/users",
                "settings/audit-log",
                "api/users")) {
            assertEquals(403, office.get(path).statusCode(), path);
            assertEquals(403, Visitor.technician().get(path).statusCode(), path);
        }
        int before = refusedRates();
        assertEquals(403, office.post("settings/rates", form).statusCode());
        assertEquals(before + 1, refusedRates());
        assertEquals(200, office.get("settings").statusCode());
        assertEquals(403, Visitor.technician().get("settings").statusCode());
    }

    @Test
    void the_office_keeps_what_panel_manufacturers_allow() {
        Map<String, String> form = office.form("settings/manufacturers/edit", "/settings/manufacturers");
        form.putAll(Map.of("name", "Brightmere & Daughters", "maxPressure", "100", "alkaliForbidden", "yes"));
        form.put("maxHardness", "soft");
        assertEquals(422, office.post("settings/manufacturers", form).statusCode());
        form.put("maxHardness", "75");
        form.put("maxTemperatureDifference", "35");
        assertEquals(303, office.post("settings/manufacturers", form).statusCode());

        var list = office.get("settings/manufacturers");
        String row = page(list).select("tr:contains(Brightmere)").text();
        assertEquals("Brightmere & Daughters 75 ppm 100 psi 35 °F Yes", row);
        String edit = page(list).select("a:contains(Brightmere)").attr("href").substring(1);
        Map<String, String> changed = office.form(edit, "/settings/manufacturers");
        assertEquals("yes", changed.get("alkaliForbidden"));
        assertEquals("35", changed.get("maxTemperatureDifference"), "comes back as it was typed");
        changed.put("maxPressure", "72.5");
        assertEquals(303, office.post("settings/manufacturers", changed).statusCode());
        assertEquals(303, office.post("settings/manufacturers", changed).statusCode(), "a retry");
    }

    @Test
    void a_person_comes_changes_and_is_shut_out() {
        Map<String, String> form = owner.form("settings/users/new", "/settings/users");
        form.putAll(Map.of("name", "Vesper Lark", "username", "vesper", "role", "TECHNICIAN"));
        var added = owner.post("settings/users", form);
        String password = Visitor.secret(added);
        assertEquals(password, Visitor.secret(owner.post("settings/users", form)), "sent twice, added once");
        Visitor first = Visitor.signedIn("vesper", password);
        assertEquals("/account?to=/sheets", location(first.get("sheets")), "somebody else knows the password");
        assertTrue(first.getJson("api/visits").body().contains("web.duty-first"));
        for (String to : List.of("/sheets", "https://example.com/", "//example.com")) {
            String shown = first.get("account?to=" + URLEncoder.encode(to, StandardCharsets.UTF_8))
                    .body();
            assertTrue(shown.contains("name=\"to\" value=\"" + to + "\""), "kept until it is judged: " + to);
        }
        Map<String, String> own = first.form("account?to=/sheets", "/account");
        own.putAll(Map.of("old", password, "wanted", Server.chosen(password), "again", Server.chosen(password)));
        assertEquals("/sheets?done=settings.account.changed", location(first.post("account", own)));
        own.putAll(Map.of(
                "old",
                Server.chosen(password),
                "wanted",
                password + " anew",
                "again",
                password + " anew",
                "to",
                "//a.example.com"));
        assertEquals("/account?done=settings.account.changed", location(first.post("account", own)), "never elsewhere");
        Visitor vesper = Visitor.signedIn("vesper", password + " anew");
        assertEquals(403, vesper.get("customers").statusCode());

        String path = "settings/users/" + form.get("id");
        Map<String, String> change = owner.form(path, "/" + path);
        Map<String, String> slower = owner.form(path, "/" + path);
        change.put("role", "OFFICE");
        saved(path, change);
        assertEquals(200, vesper.get("customers").statusCode(), "the new role holds at once");
        slower.put("name", "Vesper Nightlark");
        var overtaken = owner.post(path, slower);
        assertEquals(409, overtaken.statusCode());
        assertTrue(text(overtaken).contains("Role Office Technician"), text(overtaken));

        String fresh = Visitor.secret(owner.post(path + "/password", owner.form(path, "/" + path + "/password")));
        assertEquals(303, vesper.get("customers").statusCode(), "the old session has ended");
        assertFalse(owner.get(path).body().contains(fresh));
        Visitor back = Visitor.owner().choosing("vesper", fresh);
        saved(path + "/deactivate", Map.of());
        assertEquals(303, back.get("customers").statusCode());
        assertThrows(IllegalStateException.class, () -> Visitor.signedIn("vesper", fresh));

        Map<String, String> twin = owner.form("settings/users/new", "/settings/users");
        twin.putAll(Map.of("name", "Other", "username", "vesper", "role", "OFFICE"));
        assertEquals(409, owner.post("settings/users", twin).statusCode());
        assertEquals(404, owner.get("settings/users/" + UUID.randomUUID()).statusCode());
    }

    @Test
    void the_last_owner_stays() {
        String id = Visitor.value("select id from app_user where username = ?", Server.OWNER);
        assertEquals(
                422,
                owner.post("settings/users/" + id + "/deactivate", Map.of()).statusCode());
        assertEquals(200, owner.get("settings").statusCode());
    }

    @Test
    void everybody_changes_their_own_password() {
        owner.hire("Own Password", "own.password", "TECHNICIAN");
        String id = Visitor.value("select id from app_user where username = 'own.password'");
        String path = "settings/users/" + id;
        String password = Visitor.secret(owner.post(path + "/password", owner.form(path, "/" + path + "/password")));
        Visitor here = Visitor.signedIn("own.password", password);
        Visitor there = Visitor.signedIn("own.password", password);
        Map<String, String> form = new HashMap<>(Map.of(
                "old", "not this one at all", "wanted", "larks over the gutter", "again", "larks over a gutter"));

        var unlike = here.post("account", form);
        assertEquals(422, unlike.statusCode());
        assertEquals("true", page(unlike).select("#again").attr("aria-invalid"));
        form.put("again", "larks over the gutter");
        var wrong = here.post("account", form);
        assertEquals(422, wrong.statusCode());
        assertEquals(
                "Current password is wrong. Type it again",
                page(wrong).select("#old-error").text());
        assertFalse(wrong.body().contains("larks over the gutter"), "a password is never sent back");
        form.put("old", password);
        assertEquals("/account?done=settings.account.changed", location(here.post("account", form)));

        assertEquals(200, here.get("account").statusCode());
        assertEquals(303, there.get("account").statusCode(), "the other session has ended");
        Visitor.signedIn("own.password", "larks over the gutter");
    }

    /** As it was typed, from the form to the next sign-in: no end of it is cut off anywhere. */
    @Test
    void a_password_with_blanks_at_its_ends_is_good_as_it_was_typed_alone() {
        String given = owner.add("Blank Ends", "blank.ends", "OFFICE");
        Visitor here = Visitor.signedIn("blank.ends", given);
        String wanted = "  larks over the gutter  ";
        assertEquals(
                "/account?done=settings.account.changed",
                location(here.post("account", Map.of("old", given, "wanted", wanted, "again", wanted))));
        Visitor.signedIn("blank.ends", wanted);
        for (String cut : List.of(wanted.strip(), wanted.stripLeading(), wanted.stripTrailing())) {
            assertThrows(IllegalStateException.class, () -> Visitor.signedIn("blank.ends", cut));
        }
        String id = Visitor.value("select id from app_user where username = 'blank.ends'");
        assertEquals(
                303,
                owner.post(
                                "settings/users/" + id + "/deactivate",
                                owner.form("settings/users/" + id, "/settings/users/" + id + "/deactivate"))
                        .statusCode());
    }

    /** Before the device is asked for one, which would keep what nobody knows here. */
    @Test
    void a_passkey_without_a_name_is_not_begun() {
        Server server = Server.shared();
        var unnamed = server.send(
                server.signedIn(Server.OWNER, Server.OWNER_PASSWORD),
                HttpRequest.newBuilder(server.at("account/passkeys/begin"))
                        .header("Accept", "application/json")
                        .header("Sec-Fetch-Site", "same-origin")
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .POST(HttpRequest.BodyPublishers.ofString(
                                "label=+&password=" + URLEncoder.encode(Server.OWNER_PASSWORD, StandardCharsets.UTF_8)))
                        .build());
        assertEquals(422, unnamed.statusCode());
        assertFalse(unnamed.body().contains("challenge"), unnamed.body());
    }

    @Test
    void one_ends_a_session_of_ones_own_and_all_others() {
        String given = owner.add("Many Browsers", "many.browsers", "OFFICE");
        Visitor here = Visitor.signedIn("many.browsers", given);
        String password = "larks over the ridge";
        here.post("account", Map.of("old", given, "wanted", password, "again", password));
        Visitor first = Visitor.signedIn("many.browsers", password);
        Visitor second = Visitor.signedIn("many.browsers", password);
        Visitor other = Visitor.signedIn(Server.OWNER, Server.OWNER_PASSWORD);
        assertEquals(3, page(here.get("account")).select("table.folds tbody tr").size());
        String newest = page(here.get("account"))
                .select("form[action^=/account/sessions/][action$=/end]")
                .first()
                .attr("action");
        assertEquals(303, here.post(newest.substring(1), Map.of()).statusCode());
        assertEquals(2, page(here.get("account")).select("table.folds tbody tr").size());
        List<Integer> still = List.of(
                first.get("customers").statusCode(), second.get("customers").statusCode());
        assertTrue(still.contains(200) && still.contains(303), still.toString());
        Visitor third = Visitor.signedIn("many.browsers", password);
        assertEquals(303, here.post("account/sessions/end-others", Map.of()).statusCode());
        for (Visitor ended : List.of(first, second, third)) {
            assertEquals(303, ended.get("customers").statusCode());
        }
        assertEquals(200, here.get("customers").statusCode());
        assertEquals(200, other.get("customers").statusCode(), "nobody else's");
    }

    @Test
    void a_token_opens_what_its_person_may_until_it_is_revoked() {
        String path = "settings/users/" + Visitor.value("select id from app_user where username = 'office.visitor'");
        Map<String, String> form = owner.form(path, "/" + path + "/tokens");
        form.put("label", "Nightly export");
        assertEquals(422, owner.post(path + "/tokens", form).statusCode(), "whoever finds a browser open makes none");
        form.put("password", "not the password");
        assertEquals(422, owner.post(path + "/tokens", form).statusCode());
        form.put("password", Server.OWNER_PASSWORD);
        String token = Visitor.secret(owner.post(path + "/tokens", form));

        assertEquals(200, byToken(token, "api/customers"));
        assertEquals(403, byToken(token, "api/users"));
        var again = owner.post(path + "/tokens", form);
        assertEquals(409, again.statusCode());
        assertFalse(again.body().contains(token));
        form.put("days", "999");
        assertEquals(422, owner.post(path + "/tokens", form).statusCode());
        String revoke = page(owner.get(path))
                .select("tr:contains(Nightly export) form")
                .attr("action")
                .substring(1);
        saved(revoke, Map.of());
        assertEquals(401, byToken(token, "api/customers"));
    }

    @Test
    void a_token_is_good_for_what_it_was_issued_for() {
        String path = "settings/users/" + Visitor.value("select id from app_user where username = 'owner.test'");
        Map<String, Integer> entered = Map.of("READ", 403, "WRITE", 400, "ADMINISTER", 400);
        Map<String, Integer> administered = Map.of("READ", 403, "WRITE", 403, "ADMINISTER", 200);
        for (String scope : List.of("READ", "WRITE", "ADMINISTER")) {
            Map<String, String> form = owner.form(path, "/" + path + "/tokens");
            assertEquals("READ", form.get("scope"), "the least is offered first");
            form.putAll(Map.of("label", "Scope " + scope, "scope", scope, "password", Server.OWNER_PASSWORD));
            String token = Visitor.secret(owner.post(path + "/tokens", form));
            assertEquals(200, byToken(token, "api/customers"), scope);
            assertEquals(entered.get(scope), byToken(token, "POST", "api/invoices/preview"), scope);
            assertEquals(administered.get(scope), byToken(token, "api/users"), scope);
            assertEquals(administered.get(scope), byToken(token, "settings/users"), "as a page, " + scope);
        }
        assertTrue(text(owner.get("settings/audit-log?outcome=REFUSED&action=access.post"))
                .contains("/api/invoices/preview"));
    }

    private static int byToken(String token, String path) {
        return byToken(token, "GET", path);
    }

    private static int byToken(String token, String method, String path) {
        Server server = Server.shared();
        return server.send(
                        server.stranger(),
                        HttpRequest.newBuilder(server.at(path))
                                .header("Accept", path.startsWith("api/") ? "application/json" : "text/html")
                                .header(method.equals("GET") ? "X-Type" : "Content-Type", "application/json")
                                .header("Authorization", "Bearer " + token)
                                .method(
                                        method,
                                        method.equals("GET")
                                                ? HttpRequest.BodyPublishers.noBody()
                                                : HttpRequest.BodyPublishers.ofString("{}"))
                                .build())
                .statusCode();
    }

    @Test
    void the_audit_log_is_filtered_and_exported() {
        assertEquals(403, Visitor.technician().get("settings/service-lines").statusCode());

        var refused = owner.get("settings/audit-log?outcome=REFUSED&action=access.");
        var rows = page(refused).select("tbody tr");
        assertFalse(rows.isEmpty());
        assertTrue(rows.eachText().stream().allMatch(r -> r.contains("Refused") && r.contains("access.")));
        assertTrue(text(refused).contains("/settings/service-lines"));
        String csv = page(refused).select("a:contains(CSV)").attr("href");
        assertTrue(owner.get(csv.substring(csv.indexOf("settings"))).body().contains("/settings/service-lines"));
        var wrong = owner.get("settings/audit-log?action=Not%20An%20Action");
        assertEquals("true", page(wrong).select("#action").attr("aria-invalid"));
        assertEquals(
                0,
                page(owner.get("settings/audit-log?to=2020-01-01"))
                        .select("tbody tr")
                        .size());
    }

    @Test
    void scripts_of_the_owner_keep_people() {
        String id = UUID.randomUUID().toString();
        String body =
                "{\"id\":\"" + id + "\",\"username\":\"scripted\",\"name\":\"Scripted Person\",\"role\":\"OFFICE\","
                        + "\"password\":\"ladders lean on walls\"}";

        var added = owner.json("POST", "api/users", body);
        assertEquals(201, added.statusCode(), added.body());
        assertTrue(added.headers().firstValue("Location").orElseThrow().endsWith("/api/users/" + id));
        assertFalse(added.body().contains("ladders"));
        assertEquals(added.body(), owner.json("POST", "api/users", body).body());
        var changed = owner.json(
                "PUT",
                "api/users/" + id,
                "{\"username\":\"scripted\",\"name\":\"Scripted Owner\",\"role\":\"OWNER\",\"version\":1}");
        assertEquals(200, changed.statusCode(), changed.body());
        var out = owner.json("POST", "api/users/" + id + "/deactivation", "");
        assertEquals(200, out.statusCode(), out.body());
        assertTrue(owner.getJson("api/users").body().contains("Scripted Owner"));
        assertEquals(
                400,
                owner.json("POST", "api/users", body.replace("OFFICE", "BOSS")).statusCode());
        assertEquals(
                422,
                owner.json("POST", "api/users", body.replace("ladders lean on walls", "short"))
                        .statusCode());
        assertEquals(403, office.json("POST", "api/users", body).statusCode());
    }

    private static int refusedRates() {
        return Integer.parseInt(
                Visitor.value("select count(*) from audit_event where action = 'access.post' and outcome = 'REFUSED'"
                        + " and subject = '/settings/rates'"));
    }
}
