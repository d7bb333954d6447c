package eaveside.web.quotes;

import eaveside.web.testing.Server;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/** A customer with a site to write quotes for, on the shared server, and people who write them. */
public final class SiteToQuote {
    public static final String CUSTOMER = id(0x10);
    public static final String OTHER_CUSTOMER = id(0x11);
    public static final String SITE = id(0x20);
    public static final String OTHER_CUSTOMERS_SITE = id(0x22);
    public static final String ARRAY = id(0x30);
    public static final String ROOF = id(0x33);
    public static final String SOLAR_LINE = id(0x40);
    public static final String PANEL = id(0x50);
    public static final String SKYLIGHT = id(0x51);
    public static final String SOFT_WASH = id(0x53);
    public static final String FINDING = id(0x60);

    private static final class Shared {
        private static final SiteToQuote ONE = new SiteToQuote();
    }

    private final Server server = Server.shared();
    private final HttpClient owner;
    private final HttpClient office;
    private final HttpClient technician;

    private SiteToQuote() {
        try (var script = SiteToQuote.class.getResourceAsStream("/arranged/site-to-quote.sql");
                var connection = server.database().asOwner().getConnection();
                var statement = connection.createStatement()) {
            statement.execute(new String(script.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        owner = server.signedIn(Server.OWNER, Server.OWNER_PASSWORD);
        office = server.signedIn("quotes.office", Server.OWNER_PASSWORD);
        technician = server.signedIn("quotes.technician", Server.OWNER_PASSWORD);
    }

    private static String id(int last) {
        return String.format("01900000-0000-7000-8000-%012x", last);
    }

    /** Arranged once in a run. */
    public static SiteToQuote shared() {
        return Shared.ONE;
    }

    public HttpClient owner() {
        return owner;
    }

    public HttpClient office() {
        return office;
    }

    public HttpClient technician() {
        return technician;
    }

    public HttpResponse<String> get(HttpClient who, String path) {
        return server.get(who, path);
    }

    public HttpResponse<String> get(HttpClient who, String path, String accept) {
        return server.send(
                who,
                HttpRequest.newBuilder(server.at(path)).header("Accept", accept).build());
    }

    public HttpResponse<String> post(HttpClient who, String path, Map<String, String> form) {
        String body = form.entrySet().stream()
                .map(field -> encoded(field.getKey()) + "=" + encoded(field.getValue()))
                .collect(Collectors.joining("&"));
        return server.send(who, request(path, "application/x-www-form-urlencoded", "text/html", "POST", body));
    }

    public HttpResponse<String> json(HttpClient who, String method, String path, String body) {
        return server.send(who, request(path, "application/json", "application/json", method, body));
    }

    private HttpRequest request(String path, String type, String accept, String method, String body) {
        return HttpRequest.newBuilder(server.at(path))
                .header("Content-Type", type)
                .header("Accept", accept)
                .header("Origin", server.base().toString().replaceAll("/$", ""))
                .method(method, BodyPublishers.ofString(body))
                .build();
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    /** How often an action stands in the audit log with this outcome about this subject. */
    public int audited(String action, String outcome, String subject) throws SQLException {
        try (var connection = server.database().asOwner().getConnection();
                var query = connection.prepareStatement(
                        "select count(*) from audit_event where action = ? and outcome = ? and subject = ?")) {
            query.setString(1, action);
            query.setString(2, outcome);
            query.setString(3, subject);
            try (var result = query.executeQuery()) {
                result.next();
                return result.getInt(1);
            }
        }
    }

    /** A draft of a price book written through the form; its id. */
    public String draft(String name, String from) {
        String book = UUID.randomUUID().toString();
        var answer = post(owner, "prices/" + book, priceForm(name, from));
        if (answer.statusCode() != 303) {
            throw new IllegalStateException(answer.body());
        }
        return book;
    }

    /** A book in force today, written and published through the pages; its id. */
    public String published(String name) {
        String book = draft(name, today());
        var answer = post(owner, "prices/" + book + "/publish", Map.of("version", version(book)));
        if (answer.statusCode() != 303) {
            throw new IllegalStateException(answer.body());
        }
        return book;
    }

    /** The version that the publish page of a draft was read at. */
    public String version(String book) {
        return Jsoup.parse(get(owner, "prices/" + book + "/publish").body())
                .select("main input[name=version]")
                .val();
    }

    /** The day where the company is, by the server's clock. */
    public static String today() {
        return LocalDate.now(Server.shared().clock().withZone(ZoneId.of("America/Chicago")))
                .toString();
    }

    /** Panels at 7.50, from 40 on 6.50, a fifth more from story 2; skylights at 18; the roof per 100 square feet. */
    public static Map<String, String> priceForm(String name, String from) {
        Map<String, String> form = new LinkedHashMap<>();
        form.put("version", "0");
        form.put("name", name);
        form.put("from", from);
        form.put("visitMinimum", "150");
        form.put("sharedReduction", "5");
        form.put("lineMinimum-0-serviceLine", SOLAR_LINE);
        form.put("lineMinimum-0-amount", "100");
        form.put("price-0-serviceItem", PANEL);
        form.put("price-0-step-0-price", "7.50");
        form.put("price-0-step-1-from", "40");
        form.put("price-0-step-1-price", "6.50");
        form.put("price-0-surcharge-0-attribute", "STORY");
        form.put("price-0-surcharge-0-atLeast", "2");
        form.put("price-0-surcharge-0-percent", "20");
        form.put("price-1-serviceItem", SKYLIGHT);
        form.put("price-1-step-0-price", "18");
        form.put("price-2-serviceItem", SOFT_WASH);
        form.put("price-2-per", "100");
        form.put("price-2-step-0-price", "38");
        return form;
    }

    /** The fields of a page's form as a browser would send them. */
    public static Map<String, String> fields(HttpResponse<String> page) {
        Map<String, String> fields = new LinkedHashMap<>();
        Document document = Jsoup.parse(page.body());
        for (Element input : document.select("main form[method=post] input, main form[method=post] textarea")) {
            if (!input.attr("type").equals("checkbox") || input.hasAttr("checked")) {
                fields.put(input.attr("name"), input.val());
            }
        }
        for (Element select : document.select("main form[method=post] select")) {
            Element chosen = select.selectFirst("option[selected]");
            fields.put(select.attr("name"), chosen == null ? "" : chosen.val());
        }
        return fields;
    }

    /** Where an answer leads, without the server's address. */
    public static String location(HttpResponse<String> answer) {
        URI to = URI.create(answer.headers().firstValue("location").orElse(""));
        return to.getPath() + (to.getQuery() == null ? "" : "?" + to.getQuery());
    }
}
