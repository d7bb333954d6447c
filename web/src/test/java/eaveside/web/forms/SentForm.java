package eaveside.web.forms;

import static org.junit.jupiter.api.Assertions.assertFalse;

import eaveside.web.testing.Visitor;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.select.Elements;

/** A form of a page as somebody fills it in who is refused, and what the page says who shows it again. */
final class SentForm {
    /** Neither number nor day. */
    static final String NONSENSE = "typed 7 somehow";

    private SentForm() {}

    /** What was sent and did not come back, each with what came instead. */
    static Map<String, String> lost(Map<String, String> sent, Map<String, String> back) {
        Map<String, String> lost = new TreeMap<>();
        sent.forEach((name, value) -> {
            // Which service a line took its values from is the page's own note, not anything typed.
            if (!value.equals(back.get(name)) && !name.endsWith("-took")) {
                lost.put(name, value + " came back as " + back.get(name));
            }
        });
        return lost;
    }

    /** Errors that lead to no field of the page, or do not say which field they are about. */
    static List<String> astray(Document page) {
        Elements errors = page.select(".errors li");
        assertFalse(errors.isEmpty());
        List<String> astray = new ArrayList<>();
        for (Element error : errors) {
            Element link = error.selectFirst("a[href^=#]");
            Element field =
                    link == null ? null : page.getElementById(link.attr("href").substring(1));
            if (field == null
                    || !List.of("input", "select", "textarea", "fieldset").contains(field.tagName())) {
                astray.add(error.html() + " leads to " + (field == null ? "nothing" : field.tagName()));
            } else if (!error.text()
                    .toLowerCase(Locale.ROOT)
                    .contains(label(page, field).toLowerCase(Locale.ROOT))) {
                astray.add(error.text() + " does not say " + label(page, field));
            }
        }
        return astray;
    }

    private static String label(Document page, Element field) {
        Element label = field.tagName().equals("fieldset")
                ? field.selectFirst("> legend")
                : page.selectFirst("label[for=" + field.id() + "]");
        if (label == null) {
            return field.hasAttr("aria-label") ? field.attr("aria-label") : "a label, which " + field.id() + " lacks";
        }
        Element named = label.clone();
        named.select(".optional, .unit").remove();
        return named.text();
    }

    /** The form that posts there; the first of them where the address ends with a star. */
    static Element of(HttpResponse<String> answer, String action) {
        String selector = action.endsWith("*")
                ? "main form[method=post][action^=" + action.substring(0, action.length() - 1) + "]"
                : "main form[method=post][action=" + action + "]";
        Element form = Visitor.page(answer).selectFirst(selector);
        if (form == null) {
            throw new IllegalStateException("no form " + action + ": " + Visitor.text(answer));
        }
        return form;
    }

    /** The last choice of each list, every box ticked, and what is neither number nor day everywhere else. */
    static Map<String, String> nonsense(Element form) {
        Map<String, String> sent = new LinkedHashMap<>();
        for (Element input : form.select("input[name], textarea[name]")) {
            String type = input.attr("type");
            sent.put(
                    input.attr("name"),
                    type.equals("hidden") || type.equals("checkbox") || type.equals("radio") ? input.val() : NONSENSE);
        }
        for (Element select : form.select("select[name]")) {
            Element last = select.select("option").last();
            sent.put(select.attr("name"), last == null ? "" : last.val());
        }
        return sent;
    }

    static Map<String, String> fields(Element form) {
        Map<String, String> fields = new LinkedHashMap<>();
        for (Element input : form.select("input[name], textarea[name]")) {
            boolean box = List.of("checkbox", "radio").contains(input.attr("type"));
            if (!box || input.hasAttr("checked")) {
                fields.put(input.attr("name"), input.val());
            }
        }
        for (Element select : form.select("select[name]")) {
            Element chosen = select.selectFirst("option[selected]");
            fields.put(select.attr("name"), chosen == null ? "" : chosen.val());
        }
        return fields;
    }
}
