package eaveside.web.api;

import eaveside.web.api.World.Caller;
import java.util.Map;

/** What the owner and the office set. */
final class Setup {
    private Setup() {}

    static Map<String, String> settings(World world) {
        Area area = new Area(world, "settings", Caller.OWNER);
        company(area.part("company"));
        rates(area.part("rates"));
        taxes(area.part("taxes"));
        manufacturers(area.part("manufacturers"));
        return area.parts();
    }

    private static void company(Area area) {
        String path = "api/settings/company";
        area.get("as it was founded", path).expect(200).naming("company version", "/version");
        String company = """
                {"name": "Snap Exterior Cleaning",
                 "address": {"street": "1 Eave Row", "city": "Larkford", "region": "IL", "zipCode": "60999", "country": "US"},
                 "email": "desk@snap.example.com", "phone": "555-0170", "taxNumber": "SNAP-0001", "currency": "USD",
                 "zone": "America/Chicago", "measures": "US", "version": <company version>}
                """;
        area.put("what never changes need not be sent", path, company)
                .expect(200)
                .again();
        area.put("a stale version", path, company.replace("SNAP-0001", "SNAP-0002"));
        area.get("now", path).naming("company version", "/version");
        area.put("another currency", path, company.replace("USD", "EUR"));
        area.put("another first month", path, company.replace("\"zone\"", "\"booksFrom\": \"2027-01-01\", \"zone\""));
        area.put("no such zone", path, company.replace("America/Chicago", "Mars/Olympus"));
        area.put("no such measures", path, company.replace("\"US\", \"version\"", "\"CUBITS\", \"version\""));
        area.put("no name", path, company.replace("\"name\"", "\"nome\""));
        area.put("a blank name", path, company.replace("Snap Exterior Cleaning", " "));
        area.put("no such country", path, company.replace("\"country\": \"US\"", "\"country\": \"XX\""));
    }

    private static void rates(Area area) {
        String path = "api/settings/rates";
        String rates = """
                {"from": "2027-01-01", "laborPerHour": $32.00$, "travelPerDistance": $0.70 per 1 SMI$, "overheadPerHour": $14.00$}
                """;
        area.post("the first", path, rates).expect(201).again();
        area.post(
                        "from a later day on",
                        path,
                        rates.replace("2027-01-01", "2027-09-01").replace("32.00", "33.50"))
                .expect(201);
        area.post("others for days gone by", path, rates.replace("32.00", "33.00"));
        String later = rates.replace("2027-01-01", "2027-10-01");
        area.post("below zero", path, later.replace("32.00", "-1"));
        area.post("not a distance", path, later.replace("SMI", "HUR"));
        area.post("no such unit", path, later.replace("SMI", "ZZ9"));
        area.post("not a number", path, later.replace("32.00", "dear"));
        area.post("a comma", path, later.replace("32.00", "32,00"));
        area.post("another currency", path, World.spelled(later).replaceFirst("USD", "EUR"));
        area.post("not a date", path, later.replace("2027-10-01", "soon"));
        area.get("all", path).expect(200);
        area.get("in force on a day", path + "/2027-09-02").expect(200);
        area.get("none was in force", path + "/1999-01-01");
        area.get("not a date", path + "/soon");
    }

    private static void taxes(Area area) {
        String path = "api/settings/taxes";
        String tax = "{\"code\": \"SNAP-TAX\", \"category\": \"S\", \"rate\": \"8.25\", \"from\": \"2027-01-01\"}";
        String exempt = """
                {"code": "SNAP-EXEMPT", "category": "E", "from": "2027-01-01", "exemptionReason": "Exempt by the snapshots"}
                """;
        area.post("a rate", path, tax).expect(201).again();
        area.post("an exemption", path, exempt).expect(201);
        area.post("another rate for days gone by", path, tax.replace("8.25", "7"));
        area.post("an exemption without reason", path, exempt.replace("Exempt by the snapshots", ""));
        area.post("a rate on an exemption", path, exempt.replace("\"from\"", "\"rate\": \"5\", \"from\""));
        area.post("no such category", path, tax.replace("\"S\"", "\"Q\""));
        area.post("not a code", path, tax.replace("SNAP-TAX", "no code"));
        area.post("not a number", path, tax.replace("8.25", "much"));
        area.post("no code", path, "{\"category\": \"S\"}");
        area.get("all", path).expect(200);
        area.get("in force on a day", path + "/SNAP-TAX/" + World.TODAY).expect(200);
        area.get("none was in force", path + "/SNAP-TAX/1999-01-01");
        area.get("not a date", path + "/SNAP-TAX/soon");
    }

    private static void manufacturers(Area area) {
        String path = "api/settings/manufacturers";
        String least =
                "{\"name\": \"Snap / Panels\", \"maxPressure\": #690 KPA#, \"source\": \"Manual, page 7\", \"version\": 0}";
        area.as(Caller.OFFICE).put("a manufacturer", path, least).expect(200).again();
        area.as(Caller.OFFICE).put("all limits", path, """
                {"name": "Snap / Panels", "maxHardness": #75 M1#, "maxPressure": #500 KPA#, "maxTemperatureDifference": #20 CEL#,
                 "alkaliForbidden": true, "source": "Manual, page 8", "version": 1}
                """).expect(200);
        area.as(Caller.OFFICE)
                .put("a stale version", path, least.replace("690", "400").replace(": 0", ": 1"));
        area.as(Caller.OFFICE).put("a name that is taken", path, least.replace("Snap", "SNAP"));
        area.as(Caller.OFFICE).put("no pressure at all", path, least.replace("690", "0"));
        area.as(Caller.OFFICE).put("a unit that does not fit", path, least.replace("KPA", "SMI"));
        area.as(Caller.OFFICE).put("not a number", path, least.replace("690", "much"));
        area.as(Caller.OFFICE).put("no name", path, "{\"source\": \"Manual\"}");
        area.as(Caller.OFFICE).get("all", path).expect(200);
    }
}
