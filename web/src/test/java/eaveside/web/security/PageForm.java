package eaveside.web.security;

import eaveside.web.testing.Server;
import java.net.http.HttpClient;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;

/** A form of a page, as it is filled in there. */
record PageForm(String action, boolean isMultipart, List<Map.Entry<String, String>> fields) {
    /** Those of every page that somebody can read; of those that only differ in what they are about, one. */
    static List<PageForm> all(Server server, HttpClient reader) throws SQLException {
        Map<String, PageForm> found = new LinkedHashMap<>();
        for (List<String> addresses : Addresses.all(server.database().asOwner()).values()) {
            for (String address : addresses) {
                HttpResponse<String> page = server.get(reader, address.substring(1));
                if (page.statusCode() != 200
                        || !page.headers().firstValue("Content-Type").orElse("").contains("html")) {
                    continue;
                }
                for (Element form : Jsoup.parse(page.body()).select("form[method=post]")) {
                    List<String> actions = new ArrayList<>(List.of(form.attr("action")));
                    actions.addAll(form.select("button[formaction]").eachAttr("formaction"));
                    for (String action : actions) {
                        found.putIfAbsent(
                                action.replaceAll("[0-9a-f-]{36}", "*"),
                                new PageForm(action, form.attr("enctype").startsWith("multipart"), filledIn(form)));
                    }
                }
            }
        }
        return List.copyOf(found.values());
    }

    private static List<Map.Entry<String, String>> filledIn(Element form) {
        List<Map.Entry<String, String>> fields = new ArrayList<>();
        for (Element field : form.select("input[name], select[name], textarea[name]")) {
            boolean off =
                    (field.attr("type").equals("checkbox") || field.attr("type").equals("radio"))
                            && !field.hasAttr("checked");
            boolean filledByScript =
                    field.attr("type").equals("hidden") && field.attr("value").isEmpty();
            // What a script adds on demand is no part of the form yet.
            if (!off && !filledByScript && field.closest("template") == null) {
                String value = field.is("select")
                        ? field.select("option[selected], option").stream()
                                .map(option -> option.attr("value"))
                                .reduce("", (first, last) -> first.isEmpty() ? last : first)
                        : field.is("textarea") ? field.text() : field.attr("value");
                fields.add(Map.entry(field.attr("name"), value));
            }
        }
        return fields;
    }
}
