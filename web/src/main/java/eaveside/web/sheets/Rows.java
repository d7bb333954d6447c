package eaveside.web.sheets;

import eaveside.kernel.Ids;
import eaveside.web.forms.Fields;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.List;
import java.util.Map;

/** The repeated rows of a sheet: what a new one says at first, and adding one where the phone runs no script. */
final class Rows {
    /** The name of the buttons that ask for another row. */
    static final String MORE = "more";

    private Rows() {}

    /** The fields of a new row; the ids of what it may create are made now, so that sending twice creates once. */
    static Map<String, String> blank(String group, int row) {
        String prefix = group + "-" + row + "-";
        if (group.endsWith("-skip")) {
            return Map.of(prefix + "finding", Ids.next().toString());
        }
        return switch (group) {
            case "extra" ->
                Map.of(
                        prefix + "id",
                        Ids.next().toString(),
                        prefix + "new",
                        Ids.next().toString());
            case "finding" -> Map.of(prefix + "id", Ids.next().toString());
            default -> Map.of(prefix + "line", "");
        };
    }

    /** The form with the row added that its button asked for. */
    static MultivaluedMap<String, String> withAnother(MultivaluedMap<String, String> form) {
        String group = String.valueOf(form.getFirst(MORE));
        MultivaluedMap<String, String> more = new MultivaluedHashMap<>(form);
        more.remove(MORE);
        List<Integer> rows = Fields.shown(form).rows(group);
        blank(group, rows.isEmpty() ? 0 : rows.getLast() + 1).forEach(more::putSingle);
        return more;
    }
}
