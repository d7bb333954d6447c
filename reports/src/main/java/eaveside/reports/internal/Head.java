package eaveside.reports.internal;

import eaveside.reports.Letterhead;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What stands above and below a paper's body. */
public final class Head {
    private final Map<String, Object> values = new HashMap<>();
    private final String title;
    private int facts;

    Head(Letterhead from, Words words, String type, String number) {
        this.title = number.isBlank() ? type : type + " " + number;
        List<String> contact = new ArrayList<>(List.of(from.company(), from.phone(), from.email()));
        if (!from.taxNumber().isBlank()) {
            contact.add(words.text("tax-number") + " " + from.taxNumber());
        }
        contact.removeIf(String::isBlank);
        values.put("company", from.company());
        values.put("companyAddress", String.join("\n", from.address()));
        values.put("companyContact", String.join(" · ", contact));
        values.put("title", title);
        values.put("runningTitle", from.company() + " · " + title);
    }

    public String title() {
        return title;
    }

    Head to(String label, List<String> lines) {
        values.put("leftLabel", label);
        values.put("leftText", String.join("\n", lines));
        return this;
    }

    Head site(String label, List<String> lines) {
        values.put("siteLabel", lines.isEmpty() ? "" : label);
        values.put("siteText", String.join("\n", lines));
        return this;
    }

    /** A label with its value, five at most; nothing where there is no value. */
    Head fact(String label, String value) {
        if (!value.isBlank()) {
            facts++;
            values.put("factLabel" + facts, label);
            values.put("factValue" + facts, value);
        }
        return this;
    }

    Head put(String parameter, Object value) {
        values.put(parameter, value);
        return this;
    }

    public Map<String, Object> parameters() {
        return new HashMap<>(values);
    }
}
