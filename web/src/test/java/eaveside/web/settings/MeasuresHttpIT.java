package eaveside.web.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** What the company measures in is what people read, whatever is stored; figures are rounded for them. */
class MeasuresHttpIT {
    private final Visitor owner = Visitor.owner();

    private void measures(String measures) {
        Map<String, String> form = new HashMap<>(owner.form("settings/company", "/settings/company"));
        form.put("measures", measures);
        var saved = owner.post("settings/company", form);
        assertEquals(303, saved.statusCode(), Visitor.text(saved));
    }

    @AfterEach
    void asBefore() {
        measures("US");
    }

    @Test
    void surfaces_and_limits_follow_the_setting() {
        SiteToQuote.shared();
        Map<String, String> manufacturer = owner.form("settings/manufacturers/edit", "/settings/manufacturers");
        manufacturer.putAll(Map.of(
                "name",
                "Measured Modules",
                "maxPressure",
                "100",
                "maxTemperatureDifference",
                "36",
                "maxHardness",
                "75"));
        assertEquals(303, owner.post("settings/manufacturers", manufacturer).statusCode());
        String customer = "customers/" + SiteToQuote.CUSTOMER;
        assertEquals("75 ppm 100 psi 36 °F", limits());
        assertTrue(Visitor.text(owner.get(customer)).contains("1,900 sq ft"));

        measures("METRIC");

        assertEquals("75 mg/L 6.89 bar 20 °C", limits());
        Element area = Visitor.page(owner.get(customer)).selectFirst("span[title=1,900\u00a0sq ft]");
        assertEquals("177 m²", area.text(), "1,900 × 0.09290304 = 176.515776");
        Map<String, String> edit =
                owner.form("settings/manufacturers/edit?name=Measured+Modules", "/settings/manufacturers");
        assertEquals("6.895", edit.get("maxPressure"));
        assertEquals("20", edit.get("maxTemperatureDifference"));
        edit.put("maxPressure", "7000");
        var refused = owner.post("settings/manufacturers", edit);
        assertEquals(422, refused.statusCode());
        assertTrue(Visitor.page(refused).select("#maxPressure-error").text().contains("at most 500 bar"));
        measures("US");
        assertEquals("75 ppm 100 psi 36 °F", limits());
    }

    private String limits() {
        return Visitor.page(owner.get("settings/manufacturers"))
                .select("tr:contains(Measured Modules) td.num")
                .text();
    }

    @Test
    void stock_is_rounded_and_the_full_figure_is_behind_it() {
        CrewAtWork at = CrewAtWork.shared();
        Visitor office = at.office();
        Map<String, String> location = office.form("stock/locations/new", "/stock/locations");
        location.putAll(Map.of("name", "Rounded store", "type", "STORE"));
        assertEquals(303, office.post("stock/locations", location).statusCode());
        Map<String, String> receipt = office.form("stock/new/receipt", "/stock/new/receipt");
        receipt.putAll(Map.of(
                "location",
                location.get("id"),
                "supplier",
                "Suds & Co",
                "line-0-item",
                CrewAtWork.SOAP,
                "line-0-quantity",
                "285.9514",
                "line-0-cost",
                "64"));
        var received = office.post("stock/new/receipt", receipt);
        assertEquals(303, received.statusCode(), Visitor.text(received));
        String stock = "stock?location=" + location.get("id");
        assertEquals("286 fl oz", shown(office, stock, "285.9514\u00a0fl oz"));

        measures("METRIC");

        assertEquals("8,457 mL", shown(office, stock, "285.9514\u00a0fl oz"));
    }

    /** On the phone and in the stock forms goods are told and typed in what the company measures in; the books keep theirs. */
    @Test
    void a_phone_tells_and_takes_goods_in_the_units_of_the_company() {
        CrewAtWork at = CrewAtWork.shared();
        Visitor technician = at.technician();
        String visit = at.visit();
        String sheet = "sheets/" + visit;
        String soap = "option[value=" + CrewAtWork.SOAP + "]";
        assertTrue(options(technician, sheet, soap).contains("fl oz"), options(technician, sheet, soap));

        measures("METRIC");

        assertEquals(
                List.of("mL", "mL"),
                List.of(options(technician, sheet, soap).split("\\s+(?=Van soap|$)")).stream()
                        .map(option -> option.replaceAll(".*\\b(mL|fl oz)\\b.*", "$1"))
                        .toList());
        Map<String, String> form = technician.form(sheet, "/" + sheet);
        form.putAll(Map.of(
                "line-0-done", "48",
                "onSiteMinutes", "60",
                "drivingMinutes", "0",
                "loadingMinutes", "0",
                "distance", "0",
                "item-0-item", CrewAtWork.SOAP,
                "item-0-quantity", "9,000,000"));
        var refused = technician.post(sheet, form);
        assertEquals(422, refused.statusCode());
        String why = Visitor.text(refused);
        assertTrue(why.contains("not 9,000,000 mL") && !why.contains("fl oz"), why);
        form.put("item-0-quantity", "29.57353");
        assertEquals(303, technician.post(sheet, form).statusCode());
        assertEquals(
                "-1.000000 OZA",
                Visitor.value(
                        "select e.quantity || ' ' || i.base_unit from stock_entry e join stock_item i on i.id = e.item_id"
                                + " join job_sheet j on j.document_id = e.document_id where j.visit_id = ?::uuid",
                        visit),
                "a US fluid ounce is 29.5735295625 mL (NIST Handbook 44, Appendix C)");

        assertTrue(options(at.office(), "stock/new/write-off", soap).contains("mL"));
        Map<String, String> scrapped = at.office().form("stock/new/write-off", "/stock/new/write-off");
        scrapped.putAll(Map.of(
                "location",
                CrewAtWork.VAN,
                "reason",
                "A drop was spilled",
                "line-0-item",
                CrewAtWork.SOAP,
                "line-0-quantity",
                "29.57353"));
        assertEquals(303, at.office().post("stock/new/write-off", scrapped).statusCode());
        assertEquals(
                "-1.000000",
                Visitor.value("select quantity from stock_entry where document_id = ?::uuid", scrapped.get("id")));
    }

    /**
     * A paper that asks for money counts in what its prices go by, whatever the company measures in meanwhile: quantity times
     * price is the amount beside it, for whoever checks it (EN 16931-1: BT-129, BT-130, BT-146, BT-149 and BT-131).
     */
    @Test
    void an_invoice_is_printed_in_the_units_of_its_prices() throws Exception {
        SiteToQuote.shared();
        String invoice = UUID.randomUUID().toString();
        String body = """
                {"id": "%s", "customer": "%s", "serviceDate": "%s", "lines": [%s, %s]}
                """.formatted(
                        invoice,
                        SiteToQuote.CUSTOMER,
                        SiteToQuote.today(),
                        roof("Roof of slate", "1900", "FTK", "38.285", "100"),
                        roof("Roof of the annex", "12.5", "MTK", "4.10", "1"));
        var drafted = owner.json("POST", "api/invoices", body);
        assertEquals(201, drafted.statusCode(), drafted.body());
        assertEquals(
                200,
                owner.json("POST", "api/invoices/" + invoice + "/issue", "{\"version\": 1, \"credit\": \"KEEP\"}")
                        .statusCode());
        List<String> asSold = List.of("1,900 sq ft 38.285 per 100 sq ft", "727.42", "12.5 m² 4.10", "51.25");
        assertAll(printed(invoice), asSold);

        measures("METRIC");

        assertAll(printed(invoice), asSold);
    }

    private static String roof(String description, String quantity, String unit, String price, String per) {
        return """
                {"id": "%s", "serviceLine": "%s", "description": "%s", "taxCode": "Q-STANDARD",
                 "quantity": {"value": "%s", "unit": "%s"},
                 "price": {"gross": {"amount": "%s", "currency": "USD", "per": {"value": "%s", "unit": "%5$s"}}}}
                """.formatted(UUID.randomUUID(), SiteToQuote.SOLAR_LINE, description, quantity, unit, price, per);
    }

    private static String printed(String invoice) throws Exception {
        Server server = Server.shared();
        var pdf = server.signedIn(Server.OWNER, Server.OWNER_PASSWORD)
                .send(
                        HttpRequest.newBuilder(server.at("invoices/" + invoice + ".pdf"))
                                .build(),
                        BodyHandlers.ofByteArray());
        assertEquals(200, pdf.statusCode());
        try (var paper = Loader.loadPDF(pdf.body())) {
            return new PDFTextStripper().getText(paper).replaceAll("\\s+", " ");
        }
    }

    private static void assertAll(String text, List<String> expected) {
        expected.forEach(part -> assertTrue(text.contains(part), part + " in " + text));
    }

    /** What was typed beside one unit is never read in another, though the company changes its measures meanwhile. */
    @Test
    void a_sheet_is_read_in_the_units_of_its_page() {
        CrewAtWork at = CrewAtWork.shared();
        Visitor technician = at.technician();
        String visit = at.visit();
        Map<String, String> form = technician.form("sheets/" + visit, "/sheets/" + visit);
        form.putAll(Map.of(
                "line-0-done", "40",
                "onSiteMinutes", "60",
                "drivingMinutes", "0",
                "loadingMinutes", "0",
                "distance", "10",
                "item-0-item", CrewAtWork.SOAP,
                "item-0-quantity", "1"));
        measures("METRIC");
        var refused = technician.post("sheets/" + visit, form);
        assertEquals(422, refused.statusCode());
        assertTrue(Visitor.text(refused).contains("Check every quantity"), Visitor.text(refused));
        assertEquals("METRIC", Visitor.form(refused, "/sheets/" + visit).get("measures"));

        form.put("line-0-done", "48");
        assertEquals(303, technician.post("sheets/" + visit, form).statusCode());
        assertEquals(
                "-1.000000 OZA",
                Visitor.value(
                        "select e.quantity || ' ' || i.base_unit from stock_entry e join stock_item i on i.id = e.item_id"
                                + " join job_sheet j on j.document_id = e.document_id where j.visit_id = ?::uuid",
                        visit));
        assertEquals(
                "10.000000 SMI",
                Visitor.value(
                        "select distance || ' ' || distance_unit from job_sheet where visit_id = ?::uuid", visit));
    }

    private static String options(Visitor who, String path, String option) {
        return Visitor.page(who.get(path)).select(option).text();
    }

    private static String shown(Visitor office, String path, String full) {
        Element figure = Visitor.page(office.get(path)).selectFirst("span[title=" + full + "]");
        return figure == null ? "nothing with " + full : figure.text();
    }
}
