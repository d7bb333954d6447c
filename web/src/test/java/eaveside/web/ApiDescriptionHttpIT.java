package eaveside.web;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Described;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import jakarta.json.JsonObject;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.net.http.HttpResponse;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The description of the interface for scripts is complete, and true of what the server takes and answers. */
class ApiDescriptionHttpIT {
    private static final Described DESCRIBED = Described.ofServer();
    private static final Pattern REFERENCE = Pattern.compile("\"\\$ref\":\"#/components/schemas/([^\"]+)\"");

    private final CrewAtWork at = CrewAtWork.shared();
    private final Visitor owner = Visitor.owner();
    private final Visitor office = at.office();

    private static String id() {
        return UUID.randomUUID().toString();
    }

    /** Asks, and holds the exchange to the description. */
    private static JsonObject exchange(Visitor who, String method, String path, String body, int status) {
        HttpResponse<String> answer = method.equals("GET")
                ? who.getJson(path)
                : body != null && body.startsWith("customer;") ? who.csv(path, body) : who.json(method, path, body);
        String told = method + " " + path + ": " + answer.body();
        assertEquals(status, answer.statusCode(), told);
        assertEquals(List.of(), DESCRIBED.check(method, path, status, body, answer.body()), told);
        assertEquals(status == 201, answer.headers().firstValue("Location").isPresent(), told);
        if (status >= 400) {
            assertEquals(
                    "application/problem+json",
                    answer.headers().firstValue("Content-Type").orElse("").replaceFirst(";.*", ""),
                    told);
        }
        return status == 204 ? JsonObject.EMPTY_JSON_OBJECT : CrewAtWork.json(answer);
    }

    private static Set<String> resourceMethods() {
        Set<String> operations = new TreeSet<>();
        for (var found : new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("eaveside.web")) {
            if (!found.isAnnotatedWith(Path.class)) {
                continue;
            }
            Class<?> resource = found.reflect();
            for (Method method : resource.getDeclaredMethods()) {
                for (Annotation annotation : method.getAnnotations()) {
                    HttpMethod verb = annotation.annotationType().getAnnotation(HttpMethod.class);
                    Path own = method.getAnnotation(Path.class);
                    String path =
                            "/" + resource.getAnnotation(Path.class).value() + "/" + (own == null ? "" : own.value());
                    if (verb != null && path.replaceAll("/+", "/").startsWith("/api/")) {
                        operations.add(verb.value() + " "
                                + path.replaceAll("\\{(\\w+)\\s*:\\s*(?:[^{}]|\\{[^{}]*\\})*\\}", "{$1}")
                                        .replaceAll("/+", "/")
                                        .replaceAll("(.)/$", "$1"));
                    }
                }
            }
        }
        return operations;
    }

    @Test
    void every_operation_is_described_and_no_other() {
        assertEquals(resourceMethods(), DESCRIBED.operations());
        Set<String> ids = new TreeSet<>();
        assertAll(DESCRIBED.operations().stream().map(name -> () -> {
            JsonObject operation = DESCRIBED.operation(name);
            assertFalse(operation.getString("summary", "").isBlank(), name);
            assertTrue(ids.add(operation.getString("operationId")), name + " has the id of another");
            assertEquals(1, operation.getJsonArray("tags").size(), name);
            assertEquals(
                    !name.startsWith("GET")
                            && !name.startsWith("DELETE")
                            && !name.equals("POST /api/users/{id}/deactivation"),
                    operation.containsKey("requestBody"),
                    name);
            JsonObject answers = operation.getJsonObject("responses");
            assertEquals(
                    1,
                    answers.keySet().stream()
                            .filter(status -> status.startsWith("2"))
                            .count(),
                    name);
            assertTrue(answers.keySet().containsAll(Set.of("401", "403", "500")), name);
            answers.forEach((status, answer) -> assertEquals(
                    !status.equals("204"), answer.asJsonObject().containsKey("content"), name + " " + status));
            for (String part : name.split("[{}]")) {
                boolean inBraces = name.contains("{" + part + "}");
                assertEquals(
                        inBraces,
                        operation.toString().contains("\"name\":\"" + part + "\",\"in\":\"path\""),
                        () -> name + " does not describe " + part);
            }
        }));
    }

    @Test
    void every_schema_is_there_and_used() {
        Set<String> referred = new TreeSet<>();
        REFERENCE.matcher(DESCRIBED.api().toString()).results().forEach(found -> referred.add(found.group(1)));
        JsonObject schemas = DESCRIBED.api().getJsonObject("components").getJsonObject("schemas");
        assertEquals(new TreeSet<>(schemas.keySet()), referred);
        assertTrue(schemas.keySet().containsAll(List.of("Customer", "CustomerRequest", "Money", "Problem")));
        // What must be said and what may be left out follows from the record.
        JsonObject customer = schemas.getJsonObject("CustomerRequest");
        String required = customer.get("required").toString();
        assertTrue(required.contains("\"name\"") && !required.contains("\"note\""), required);
        assertFalse(customer.getBoolean("additionalProperties"));
        assertTrue(schemas.getJsonObject("Customer").get("required").toString().contains("\"note\""));
    }

    @Test
    void every_operation_refuses_as_described() {
        Visitor stranger = Visitor.stranger();
        Visitor technician = Visitor.technician();
        assertAll(DESCRIBED.operations().stream().map(name -> () -> {
            String method = name.split(" ")[0];
            String template = name.split(" ")[1];
            String path = template.substring(1)
                    .replace("finding-types/{code}", "finding-types/NO_SUCH")
                    .replace("{code}", "9998")
                    .replace("{date}", "1990-01-01")
                    .replace("{month}", "1990-01")
                    .replaceAll("\\{\\w+}", id());
            JsonObject operation = DESCRIBED.operation(name);
            boolean takesJson = operation.containsKey("requestBody")
                    && operation.getJsonObject("requestBody").toString().contains("application/json");
            String nonsense = takesJson ? "{\"nonsense\": 1}" : method.equals("GET") ? null : "";
            String file = template.endsWith("/import") ? "customer;\n" : nonsense;
            exchange(stranger, method, path, file, 401);
            if (!template.endsWith("/sheet")) {
                exchange(technician, method, path, file, 403);
            }
            if (takesJson) {
                JsonObject refused = exchange(owner, method, path, nonsense, 400);
                assertTrue(refused.getJsonArray("fields").toString().contains("nonsense"), name + refused);
            } else if (template.contains("{") && method.equals("GET")) {
                exchange(owner, method, path, null, 404);
            }
        }));
    }

    @Test
    void customers_go_as_described() {
        String path = "api/customers/" + id();
        String body = """
                {"name": "Described Windows", "type": "BUSINESS", "phone": "555-0177", "paymentTermDays": 30,
                 "address": {"street": "7 Described Way", "city": "Fairview", "country": "US"}}""";
        exchange(office, "PUT", path, body, 200);
        JsonObject stale = exchange(office, "PUT", path, body.replace("555-0177", "555-0178"), 409);
        assertEquals("555-0177", stale.getJsonObject("stored").getString("phone"));
        assertNotNull(stale.getJsonObject("sent"));
        JsonObject known = exchange(office, "PUT", "api/customers/" + id(), body, 409);
        assertFalse(known.getJsonArray("duplicates").isEmpty());
        exchange(office, "PUT", "api/customers/" + id() + "?duplicates=allow", body, 200);
        exchange(office, "PUT", path, body.replace("\"US\"", "\"USA\""), 422);
        exchange(office, "PUT", path + "/contacts/" + id(), "{\"name\": \"Jory Wick\"}", 200);
        String site = id();
        exchange(
                office,
                "PUT",
                path + "/sites/" + site,
                "{\"name\": \"Shop\", \"address\": {\"country\": \"US\"}}",
                200);
        exchange(
                office,
                "PUT",
                path + "/sites/" + site + "/surfaces/" + id(),
                "{\"type\": \"WINDOW\", \"name\": \"Front\", \"extent\": {\"value\": 12, \"unit\": \"H87\"}}",
                200);
        exchange(office, "GET", path, null, 200);
        exchange(office, "GET", "api/customers?q=described&all=true", null, 200);
        exchange(office, "GET", "api/customers?all=perhaps", null, 400);
        String file = "customer;country;site;surface;surface_type;extent\nDescribed Import;US;Home;Front;window;many\n";
        exchange(office, "POST", "api/customers/import?dryRun=true", file, 200);
        JsonObject bad = exchange(office, "POST", "api/customers/import", file, 422);
        assertFalse(bad.getJsonArray("badRows").isEmpty());
    }

    @Test
    void stock_and_books_go_as_described() {
        String item = id();
        String soap = """
                {"code": "D-SOAP", "name": "Described soap", "type": "CONCENTRATE", "baseUnit": "OZA",
                 "packs": [{"name": "canister", "content": {"value": "1", "unit": "GLL"}}]}""";
        exchange(office, "PUT", "api/stock/items/" + item, soap, 200);
        exchange(office, "PUT", "api/stock/items/" + id(), soap, 409);
        String receipt = """
                {"id": "%s", "date": "%s", "location": "%s", "supplier": "Suds & Co",
                 "lines": [{"item": "%s", "lot": "%s", "pack": "canister",
                            "quantity": {"value": "2", "unit": "H87"}, "cost": {"amount": "64.00", "currency": "USD"}}]}
                """.formatted(id(), SiteToQuote.today(), CrewAtWork.VAN, item, id());
        JsonObject posted = exchange(office, "POST", "api/stock/receipts", receipt, 201);
        exchange(office, "POST", "api/stock/receipts", receipt.replace("Suds", "Foam"), 409);
        exchange(office, "GET", "api/stock/locations/" + CrewAtWork.VAN + "/levels", null, 200);
        exchange(
                office,
                "PUT",
                "api/stock/locations/" + CrewAtWork.VAN + "/reorder-points/" + item,
                "{\"quantity\": {\"value\": \"1\", \"unit\": \"GLL\"}}",
                200);
        exchange(owner, "GET", "api/books/documents/" + posted.getString("id"), null, 200);
        String journal = """
                {"id": "%s", "type": "JOURNAL", "summary": "Ladder", "lines": [
                  {"account": "6100", "debit": {"amount": "86.20", "currency": "USD"}},
                  {"account": "1000", "credit": {"amount": "86.20", "currency": "USD"}}]}""".formatted(id());
        String document =
                exchange(owner, "POST", "api/books/journals", journal, 201).getString("id");
        exchange(
                owner,
                "POST",
                "api/books/journals",
                journal.replace("\"1000\"", "\"1999\"").replaceFirst("[0-9a-f-]{36}", id()),
                422);
        exchange(
                owner,
                "POST",
                "api/books/documents/" + document + "/reversal",
                "{\"id\": \"" + id() + "\", \"reason\": \"Entered twice\"}",
                201);
        exchange(owner, "GET", "api/books/trial-balance?from=2026-01-01&to=2026-01-31", null, 200);
        exchange(owner, "GET", "api/books/trial-balance?from=soon", null, 400);
    }

    @Test
    void settings_go_as_described() {
        String line = id();
        exchange(office, "PUT", "api/service-lines/" + line, "{\"code\": \"D-LINE\", \"name\": \"Described\"}", 200);
        exchange(
                office,
                "PUT",
                "api/services/" + id(),
                "{\"serviceLine\": \"" + line + "\", \"code\": \"D-ITEM\", \"name\": \"Described\", \"unit\": \"H87\","
                        + " \"minutesPerUnit\": \"1.5\", \"taxCode\": \"Q-STANDARD\", \"consumables\": []}",
                200);
        exchange(owner, "GET", "api/settings/company", null, 200);
        exchange(
                owner,
                "POST",
                "api/settings/taxes",
                "{\"code\": \"D-TAX\", \"category\": \"S\", \"rate\": \"6.5\", \"from\": \"2026-01-01\"}",
                201);
        exchange(owner, "GET", "api/settings/taxes/D-TAX/2026-03-01", null, 200);
        exchange(owner, "GET", "api/settings/taxes/D-TAX/march", null, 400);
        exchange(office, "GET", "api/settings/taxes", null, 403);
        String user = id();
        exchange(
                owner,
                "POST",
                "api/users",
                "{\"id\": \"" + user + "\", \"username\": \"described\", \"name\": \"Described Person\","
                        + " \"role\": \"TECHNICIAN\", \"password\": \"ladders lean on walls\"}",
                201);
        exchange(owner, "POST", "api/users/" + user + "/deactivation", "", 200);
        exchange(owner, "GET", "api/audit-log?by=" + user + "&outcome=DONE&from=2026-01-01", null, 200);
        exchange(owner, "GET", "api/audit-log?outcome=MAYBE", null, 400);
    }

    @Test
    void the_way_from_quote_to_payment_goes_as_described() {
        at.site().published("Described prices");
        String inAYear = LocalDate.now(ZoneOffset.UTC).plusYears(1).toString();
        String quote = """
            {"id": "%s", "customer": "%s", "site": "%s", "scope":
            {"validUntil": "%s", "note": "", "travel": {"drivingMinutes": 40, "distance": {"value": "18.5", "unit": "SMI"}},
             "lines": [{"id": "%s", "serviceItem": "%s", "surface": "%s", "quantity": {"value": "48", "unit": "H87"}}]}}
            """.formatted(
                id(), SiteToQuote.CUSTOMER, SiteToQuote.SITE, inAYear, id(), SiteToQuote.PANEL, SiteToQuote.ARRAY);
        exchange(office, "POST", "api/quotes", quote.replace(inAYear, "1999-12-31"), 422);
        JsonObject made = exchange(office, "POST", "api/quotes", quote, 201);
        String path = "api/quotes/" + made.getString("id");
        JsonObject sent =
                exchange(office, "POST", path + "/send", "{\"version\": " + made.getInt("version") + "}", 200);
        exchange(office, "POST", path + "/send", "{\"version\": 77}", 409);
        exchange(
                office,
                "POST",
                path + "/accept",
                "{\"version\": " + sent.getInt("version") + ", \"acceptedBy\": \"by phone\"}",
                200);
        String visit = at.visit();
        at.signedOff(visit);
        exchange(office, "GET", "api/visits/" + visit, null, 200);
        at.settled(visit);
        JsonObject bill = exchange(
                        office, "POST", "api/invoices/from-visit/" + visit, "{\"id\": \"" + id() + "\"}", 201)
                .getJsonObject("content");
        String invoice = "api/invoices/" + bill.getString("id");
        exchange(office, "GET", invoice, null, 200);
        exchange(office, "DELETE", invoice, "", 400);
        exchange(office, "DELETE", invoice + "?version=" + bill.getInt("version"), "", 204);
        bill = exchange(office, "POST", "api/invoices/from-visit/" + visit, "{\"id\": \"" + id() + "\"}", 201)
                .getJsonObject("content");
        invoice = "api/invoices/" + bill.getString("id");
        JsonObject issued = exchange(
                office,
                "POST",
                invoice + "/issue",
                "{\"version\": " + bill.getInt("version") + ", \"date\": \"" + SiteToQuote.today()
                        + "\", \"credit\": \"KEEP\"}",
                200);
        exchange(office, "GET", invoice, null, 200);
        exchange(office, "GET", "api/invoices?customer=" + SiteToQuote.CUSTOMER, null, 200);
        String payment = """
                {"id": "%s", "customer": "%s", "amount": {"amount": "1.00", "currency": "USD"}, "method": "CHECK",
                 "allocations": [{"invoice": "%s", "amount": {"amount": "1.00", "currency": "USD"}}]}""".formatted(id(), SiteToQuote.CUSTOMER, issued.getString("id"));
        exchange(office, "POST", "api/payments", payment, 201);
        exchange(office, "POST", "api/payments", payment.replace("\"1.00\"", "\"2.00\""), 409);
    }
}
