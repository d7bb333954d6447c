package eaveside.web.invoices;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.web.quotes.SiteToQuote;
import java.util.Map;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;

/** A visit brought from its quote to its signed sheet through the pages: 48 panels done, and 2 skylights nobody had planned. */
public record VisitToBill(SiteToQuote at, String quote, String id) {
    private static final String TECHNICIAN = "01900000-0000-7000-8000-000000000002";

    static VisitToBill done(SiteToQuote at) {
        at.published("Prices to bill from");
        String quote = accepted(at);
        String id = scheduled(at, quote);
        signed(at, id, "");
        return new VisitToBill(at, quote, id);
    }

    /** An accepted quote of the panels. */
    public static String accepted(SiteToQuote at) {
        Map<String, String> form = SiteToQuote.fields(
                at.get(at.office(), "quotes/new?customer=" + SiteToQuote.CUSTOMER + "&site=" + SiteToQuote.SITE));
        String line = form.entrySet().stream()
                .filter(f -> f.getKey().startsWith("line-") && f.getValue().equals(SiteToQuote.PANEL))
                .map(f -> f.getKey().replace("serviceItem", ""))
                .findFirst()
                .orElseThrow();
        form.put(line + "on", "yes");
        sent(at, "quotes", form);
        String quote = form.get("id");
        sent(at, "quotes/" + quote + "/send", Map.of("version", version(at, "quotes/" + quote)));
        sent(
                at,
                "quotes/" + quote + "/accept",
                Map.of("version", version(at, "quotes/" + quote), "acceptedBy", "Ms. Reed, by phone"));
        return quote;
    }

    /** The visit that carries it out, today. */
    public static String scheduled(SiteToQuote at, String quote) {
        Map<String, String> form = SiteToQuote.fields(at.get(at.office(), "visits/new?quote=" + quote));
        form.put("date", SiteToQuote.today());
        form.put("crew", TECHNICIAN);
        sent(at, "visits/new", form);
        return form.get("id");
    }

    /** Signed off with a note of the technician. */
    public static void signed(SiteToQuote at, String visit, String note) {
        Map<String, String> form = SiteToQuote.fields(at.get(at.technician(), "sheets/" + visit));
        form.put("line-0-done", "48");
        form.put("extra-0-serviceItem", SiteToQuote.SKYLIGHT);
        form.put("extra-0-quantity", "2");
        form.put("extra-0-acceptedBy", "Ms. Reed, on site");
        form.put("onSiteMinutes", "120");
        form.put("drivingMinutes", "30");
        form.put("loadingMinutes", "10");
        form.put("distance", "12");
        form.put("note", note);
        var answer = at.post(at.technician(), "sheets/" + visit, form);
        assertEquals(
                303,
                answer.statusCode(),
                () -> Jsoup.parse(answer.body()).select("main").text());
    }

    /** Decides that the extra work is at no charge. */
    public void give() {
        Element decide = Jsoup.parse(at.get(at.office(), "visits/" + id).body())
                .select("form[action*=/scope-changes/]")
                .getFirst();
        sent(
                at,
                decide.attr("action").substring(1),
                Map.of("version", decide.select("[name=version]").val(), "decision", "NO_CHARGE", "note", ""));
    }

    private static String version(SiteToQuote at, String path) {
        return Jsoup.parse(at.get(at.office(), path).body())
                .select("main input[name=version]")
                .val();
    }

    private static void sent(SiteToQuote at, String path, Map<String, String> form) {
        var answer = at.post(at.office(), path, form);
        assertEquals(
                303,
                answer.statusCode(),
                () -> path + ": " + Jsoup.parse(answer.body()).select("main").text());
    }
}
