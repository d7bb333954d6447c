package eaveside.web.books;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.web.testing.Visitor;
import java.net.http.HttpResponse;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;

/** Posts a document of two entries through the page of the books. */
final class JournalForm {
    private JournalForm() {}

    /** The document's id. */
    static String posted(
            Visitor who, String type, LocalDate day, String summary, String debit, String credit, String amount) {
        Map<String, String> form = new HashMap<>(who.form("books/journal", "/books/journal"));
        form.put("type", type);
        form.put("date", day.toString());
        form.put("summary", summary);
        form.put("line-0-account", debit);
        form.put("line-0-debit", amount);
        form.put("line-1-account", credit);
        form.put("line-1-credit", amount);
        HttpResponse<String> posted = who.post("books/journal", form);
        assertEquals(303, posted.statusCode(), () -> Visitor.text(posted));
        return form.get("id");
    }
}
