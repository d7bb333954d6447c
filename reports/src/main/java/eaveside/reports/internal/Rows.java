package eaveside.reports.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The body of a paper, top to bottom: each row names the band that prints it. Rows of one block stay together on a
 * page where they fit on one.
 */
public final class Rows {
    private final List<Map<String, ?>> rows = new ArrayList<>();
    private String section = "";
    private int block;

    Rows section(String name) {
        section = name;
        return this;
    }

    Rows block() {
        block++;
        return this;
    }

    Row add(String band) {
        Row row = new Row();
        row.put("section", section).put("block", block).put("band", band);
        row.put("text", "")
                .put("detail", "")
                .put("quantity", "")
                .put("price", "")
                .put("tax", "")
                .put("amount", "");
        rows.add(row.values);
        return row;
    }

    /** A titled paragraph; nothing where there are no words. */
    void words(String title, String words) {
        if (!words.isBlank()) {
            block().add("WORDS").put("text", title).put("detail", words);
        }
    }

    /** A framed caution that always defers to local codes and licensed trades; nothing where there is no caution. */
    void caution(Words words, String caution) {
        if (!caution.isBlank()) {
            block().frame(words, words.text("cautions"), caution);
        }
    }

    /** The frame of a caution, in the running block. */
    void frame(Words words, String title, String caution) {
        boolean said = caution.toLowerCase(words.locale()).contains(words.text("cautions.said"));
        add("CAUTION").put("text", title).put("detail", said ? caution : caution + " " + words.text("cautions.always"));
    }

    public List<Map<String, ?>> list() {
        return rows;
    }

    /** One row. */
    static final class Row {
        private final Map<String, Object> values = new HashMap<>();

        Row put(String field, Object value) {
            values.put(field, value);
            return this;
        }
    }
}
