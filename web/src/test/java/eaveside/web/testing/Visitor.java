package eaveside.web.testing;

import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/** Somebody in front of a server, the shared one unless told otherwise, who reads pages, fills in their forms and sends what scripts send. */
public final class Visitor {
    private static final class People {
        private static final Visitor OWNER = signedIn(Server.OWNER, Server.OWNER_PASSWORD);
        private static final Visitor OFFICE = OWNER.hire("Office of the Tests", "office.visitor", "OFFICE");
        private static final Visitor TECHNICIAN =
                OWNER.hire("Technician of the Tests", "technician.visitor", "TECHNICIAN");
    }

    private final Server server;
    private final HttpClient client;

    private Visitor(Server server, HttpClient client) {
        this.server = server;
        this.client = client;
    }

    public static Visitor signedIn(String username, String password) {
        return signedIn(Server.shared(), username, password);
    }

    /** Somebody of a company of its own. */
    public static Visitor signedIn(Server server, String username, String password) {
        return new Visitor(server, server.signedIn(username, password));
    }

    public static Visitor stranger() {
        return new Visitor(Server.shared(), Server.shared().stranger());
    }

    /** The owner of a company of its own. */
    public static Visitor ownerOf(Server server) {
        return signedIn(server, Server.OWNER, Server.OWNER_PASSWORD);
    }

    public static Visitor owner() {
        return People.OWNER;
    }

    public static Visitor office() {
        return People.OFFICE;
    }

    public static Visitor technician() {
        return People.TECHNICIAN;
    }

    /** What the owner decides about the office; whoever opens the books closes them again. */
    public static void letOfficeReadBooks(boolean reads) {
        var answer = owner().json("PUT", "api/users/office-rights", "{\"readsBooks\":" + reads + "}");
        if (answer.statusCode() != 200) {
            throw new IllegalStateException(answer.body());
        }
    }

    /** Adds a person through the owner's page, who signs in with the password that it shows and chooses one of their own. */
    public Visitor hire(String name, String username, String role) {
        return choosing(username, add(name, username, role));
    }

    /** Adds a person likewise, who has not signed in yet; the password that the page shows. */
    public String add(String name, String username, String role) {
        Map<String, String> form = form("settings/users/new", "/settings/users");
        form.put("name", name);
        form.put("username", username);
        form.put("role", role);
        return secret(post("settings/users", form));
    }

    /** Somebody who signs in with a password that was given to them, and chooses another. */
    public Visitor choosing(String username, String given) {
        return new Visitor(server, server.choosing(username, given));
    }

    /** What a page shows once. */
    public static String secret(HttpResponse<String> answer) {
        Element secret = page(answer).getElementById("secret");
        if (secret == null) {
            throw new IllegalStateException("no secret, status " + answer.statusCode() + ": " + text(answer));
        }
        return secret.text();
    }

    /** As a browser asks: a page rather than anything else. */
    public HttpResponse<String> get(String path) {
        return get(path, "text/html,*/*;q=0.8");
    }

    private HttpResponse<String> get(String path, String accept) {
        return server.send(
                client,
                HttpRequest.newBuilder(server.at(path)).header("Accept", accept).build());
    }

    public HttpResponse<String> getJson(String path) {
        return get(path, "application/json");
    }

    public HttpResponse<String> post(String path, Map<String, String> form) {
        return postAll(path, form.entrySet());
    }

    /** The same where a field is sent more than once. */
    public HttpResponse<String> postAll(String path, Collection<Map.Entry<String, String>> form) {
        String body = form.stream()
                .map(field -> encoded(field.getKey()) + "=" + encoded(field.getValue()))
                .collect(Collectors.joining("&"));
        return send("POST", path, "application/x-www-form-urlencoded", "text/html", body);
    }

    public HttpResponse<String> json(String method, String path, String body) {
        return send(method, path, "application/json", "application/json", body);
    }

    /** Sends a file as a script does. */
    public HttpResponse<String> csv(String path, String content) {
        return send("POST", path, "text/csv", "application/json", content);
    }

    /** Sends a file as a browser's form does. */
    public HttpResponse<String> upload(String path, String field, String file, String content) {
        String body = "--b0undary\r\nContent-Disposition: form-data; name=\"" + field + "\"; filename=\"" + file
                + "\"\r\nContent-Type: text/csv\r\n\r\n" + content + "\r\n--b0undary--\r\n";
        return send("POST", path, "multipart/form-data; boundary=b0undary", "text/html", body);
    }

    private HttpResponse<String> send(String method, String path, String type, String accept, String body) {
        return server.send(
                client,
                HttpRequest.newBuilder(server.at(path))
                        .header("Content-Type", type)
                        .header("Accept", accept)
                        .header("Origin", server.base().toString().replaceAll("/$", ""))
                        .method(method, BodyPublishers.ofString(body))
                        .build());
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    public static Document page(HttpResponse<String> answer) {
        return Jsoup.parse(answer.body());
    }

    /** What the page says, without its navigation. */
    public static String text(HttpResponse<String> answer) {
        return page(answer).select("main").text();
    }

    /** The fields of one form of a page, as a browser would send them. */
    public Map<String, String> form(String path, String action) {
        return form(get(path), action);
    }

    /** The fields of one form, as a browser would send them. */
    public static Map<String, String> form(HttpResponse<String> answer, String action) {
        Element form = page(answer).selectFirst("main form[method=post][action=" + action + "]");
        if (form == null) {
            throw new IllegalStateException(
                    "no form for " + action + ", status " + answer.statusCode() + ": " + text(answer));
        }
        Map<String, String> fields = new LinkedHashMap<>();
        for (Element input : form.select("input[name], textarea[name]")) {
            if (!input.attr("type").equals("checkbox") || input.hasAttr("checked")) {
                fields.put(input.attr("name"), input.val());
            }
        }
        for (Element select : form.select("select[name]")) {
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

    /** The first column of the first row that the database answers, as text. */
    public static String value(String sql, Object... parameters) {
        return value(Server.shared(), sql, parameters);
    }

    /** The same of another server's database. */
    public static String value(Server server, String sql, Object... parameters) {
        try (var connection = server.database().asOwner().getConnection();
                var query = connection.prepareStatement(sql)) {
            for (int i = 0; i < parameters.length; i++) {
                query.setObject(i + 1, parameters[i]);
            }
            try (var result = query.executeQuery()) {
                result.next();
                return String.valueOf(result.getObject(1));
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
