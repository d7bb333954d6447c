package eaveside.web.books;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;

/** The close of a month by page, on the demo company: two of its months are closed, a third is over. */
class MonthCloseHttpIT {
    private final Server server = Server.demo();
    private final HttpClient owner = server.signedIn("edda", server.passwordOf("edda"));

    private HttpResponse<String> post(String path, Map<String, String> form) {
        String body = form.entrySet().stream()
                .map(f -> f.getKey() + "=" + URLEncoder.encode(f.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return server.send(
                owner,
                HttpRequest.newBuilder(server.at(path))
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .header("Origin", server.base().toString().replaceAll("/$", ""))
                        .POST(BodyPublishers.ofString(body))
                        .build());
    }

    private Document get(String path) {
        return Visitor.page(server.get(owner, path));
    }

    /** The first row of the page's variances: labour. */
    private static String labour(Document month) {
        return month.select("main table")
                .getFirst()
                .select("tbody tr")
                .getFirst()
                .text();
    }

    @Test
    void a_close_shows_what_is_open_asks_first_and_empties_no_account() {
        Element closed =
                get("books").select("main tr:has(td:contains(Closed)) a").getLast();
        Document before = get(closed.attr("href").substring(1));
        assertTrue(before.select("form[action=/books/close]").isEmpty(), "closed for good");
        String wages = labour(before);
        assertTrue(wages.matches("Labour variance \\$[0-9,]+\\.00 \\$[0-9,]+\\.[0-9]{2} .*"), wages);

        Element oldest = get("books").select("main tr:has(td:contains(Open)) a").getLast();
        String path = oldest.attr("href").substring(1);
        Document open = get(path);
        assertTrue(
                open.select("main").text().contains("Still open"),
                open.select("main").text());
        String spent = labour(open);
        Map<String, String> form = Visitor.form(server.get(owner, path), "/books/close");
        HttpResponse<String> asked = post("books/close", form);
        assertEquals(422, asked.statusCode());
        assertEquals(1, Visitor.page(asked).select(".errors a[href=#confirm]").size(), "it asks first");
        assertEquals(spent, labour(get(path)));

        form = new HashMap<>(form);
        form.put("confirm", "yes");
        HttpResponse<String> done = post("books/close", form);
        assertEquals(303, done.statusCode(), () -> Visitor.text(done));
        assertTrue(Visitor.location(done).startsWith("/" + path), Visitor.location(done));
        Document after = get(path);
        assertTrue(
                after.select("main .lead").text().startsWith("Closed"),
                after.select("main").text());
        assertEquals(spent, labour(after), "wages stay where they were spent");
        assertEquals(303, post("books/close", form).statusCode(), "the same again is a retry");
    }
}
