package eaveside.web.visits;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.UUID;

/** A crew of one with its van on the shared server, at the site that quotes are written for. */
public final class CrewAtWork {
    public static final String TECHNICIAN = "01900000-0000-7000-8000-000000000002";
    public static final String SKYLIGHTS = "01900000-0000-7000-8000-000000000031";
    public static final String SOAP = "01900000-0000-7000-8000-000000000101";
    public static final String RESIN = "01900000-0000-7000-8000-000000000102";
    public static final String MIX = "01900000-0000-7000-8000-000000000104";
    public static final String VAN = "01900000-0000-7000-8000-000000000105";
    public static final String CANISTER = "01900000-0000-7000-8000-000000000106";

    private static final class Shared {
        private static final CrewAtWork ONE = new CrewAtWork();
    }

    private final SiteToQuote site = SiteToQuote.shared();
    private final Visitor office;
    private final Visitor technician;

    private CrewAtWork() {
        try (var script = CrewAtWork.class.getResourceAsStream("/arranged/van.sql");
                var connection = Server.shared().database().asOwner().getConnection();
                var statement = connection.createStatement()) {
            statement.execute(new String(script.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        office = Visitor.signedIn("quotes.office", Server.OWNER_PASSWORD);
        technician = Visitor.signedIn("quotes.technician", Server.OWNER_PASSWORD);
        var received = office.json("POST", "api/stock/receipts", """
                {"id": "%s", "date": "%s", "location": "%s", "supplier": "Suds & Co", "lines": [
                  {"item": "%s", "lot": "%s", "quantity": {"value": "640", "unit": "OZA"}, "cost": {"amount": "320.00", "currency": "USD"}},
                  {"item": "%s", "lot": "%s", "quantity": {"value": "10000", "unit": "GRN"}, "cost": {"amount": "180.00", "currency": "USD"}, "label": "C-1"}]}
                """.formatted(
                        id(), SiteToQuote.today(), VAN, SOAP, id(), RESIN, CANISTER));
        assertEquals(201, received.statusCode(), received.body());
    }

    /** Arranged once in a run. */
    public static CrewAtWork shared() {
        return Shared.ONE;
    }

    public Visitor office() {
        return office;
    }

    /** The one in the crew, with the van. */
    public Visitor technician() {
        return technician;
    }

    public SiteToQuote site() {
        return site;
    }

    public static String id() {
        return UUID.randomUUID().toString();
    }

    /** A visit booked for today and 48 panels; its id. */
    public String visit() {
        return visit(TECHNICIAN);
    }

    public String visit(String crew) {
        String id = id();
        var scheduled = office.json("POST", "api/visits", """
                {"id": "%s", "customer": "%s", "site": "%s", "date": "%s", "crew": ["%s"], "note": "Ring twice",
                 "lines": [{"id": "%s", "serviceItem": "%s", "surface": "%s", "quantity": {"value": "48", "unit": "H87"}}]}
                """.formatted(
                        id,
                        SiteToQuote.CUSTOMER,
                        SiteToQuote.SITE,
                        SiteToQuote.today(),
                        crew,
                        id(),
                        SiteToQuote.PANEL,
                        SiteToQuote.ARRAY));
        assertEquals(201, scheduled.statusCode(), scheduled.body());
        return id;
    }

    /** The visit signed off with two panels skipped and four skylights beyond the plan; the sheet's id. */
    public String signedOff(String visit) {
        String sheet = id();
        String line = read(visit).getJsonArray("lines").getJsonObject(0).getString("id");
        var signed = technician.json("PUT", "api/visits/" + visit + "/sheet", """
                {"id": "%s", "completedOn": "%s",
                 "lines": [{"line": "%s", "done": {"value": "46", "unit": "H87"},
                            "skips": [{"quantity": {"value": "2", "unit": "H87"}, "reason": "NO_ACCESS", "note": "Ladder too short"}]}],
                 "extras": [{"id": "%s", "serviceItem": "%s", "surface": "%s", "quantity": {"value": "4", "unit": "H87"}, "acceptedBy": "Ms. Quill"}],
                 "mixes": [{"mix": "%s", "volume": {"value": "2", "unit": "GLL"}}],
                 "readings": [{"tapWater": "250", "pureWater": "5", "volume": {"value": "40", "unit": "GLL"}, "canister": "%s"}],
                 "effort": {"onSiteMinutes": 120, "drivingMinutes": 40, "loadingMinutes": 20, "distance": {"value": "12", "unit": "SMI"}}}
                """.formatted(
                        sheet, SiteToQuote.today(), line, id(), SiteToQuote.SKYLIGHT, SKYLIGHTS, MIX, CANISTER));
        assertEquals(200, signed.statusCode(), signed.body());
        return sheet;
    }

    /** Decides what the sheet of {@link #signedOff} did differently: what was skipped is left, what was more is at no charge. */
    public void settled(String visit) {
        for (JsonObject scopeChange : read(visit).getJsonArray("scopeChanges").getValuesAs(JsonObject.class)) {
            var decided = office.json(
                    "POST",
                    "api/visits/" + visit + "/scope-changes/" + scopeChange.getString("id"),
                    "{\"version\": 1, \"decision\": \"%s\"}"
                            .formatted(scopeChange.getString("type").equals("EXTRA") ? "NO_CHARGE" : "CANCEL"));
            assertEquals(200, decided.statusCode(), decided.body());
        }
    }

    /** The visit as scripts read it. */
    public JsonObject read(String visit) {
        return json(office.getJson("api/visits/" + visit));
    }

    public static JsonObject json(HttpResponse<String> answer) {
        try (var reader = Json.createReader(new StringReader(answer.body()))) {
            return reader.readObject();
        }
    }
}
