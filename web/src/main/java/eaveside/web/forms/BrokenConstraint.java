package eaveside.web.forms;

import eaveside.kernel.Refusal;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.postgresql.util.PSQLException;
import org.postgresql.util.ServerErrorMessage;

/**
 * What the database refused although the use case found nothing wrong: two users did at once what only one of them could, or
 * a rule is missing in a constructor. The user is told by the name of the constraint, which names the column; {@link #in}
 * finds it in whatever was thrown.
 *
 * <p>PostgreSQL names a constraint by its table and columns ({@code vehicle_name_key}); the few that are named otherwise are
 * listed here. Its error codes are those of class 23, integrity constraint violation (PostgreSQL documentation, Appendix A).
 */
public final class BrokenConstraint extends Refusal {
    private static final long serialVersionUID = 1;

    private static final String UNIQUE = "23505";
    private static final String CHECK = "23514";
    private static final String MISSING = "23502";
    private static final String FOREIGN_KEY = "23503";
    private static final String RAISED = "23000";

    /** A number with more digits than its column takes; of class 22, data exception. */
    private static final String TOO_LARGE = "22003";

    /** Where neither the columns nor {@code id} say which field it is about. */
    static final Map<String, String> FIELDS = Map.of(
            "panel_manufacturer_by_name", "name",
            "finding_type_by_name", "name",
            "finding_closed_once", "finding",
            "invoice_once_per_visit", "visit",
            "visit_of_quote", "quote",
            "document_reverses_key", "original",
            "job_sheet_document_id_visit_id_key", "visit",
            "service_line_code", "code",
            "service_item_code", "code",
            "lot_label", "label");

    private final String constraint;

    private BrokenConstraint(Type type, String message, String constraint, String... fields) {
        super(type, message, fields);
        this.constraint = constraint;
    }

    @Override
    public String code() {
        return constraint.isEmpty() ? "constraint" : "constraint." + constraint.replace('_', '-');
    }

    /** Null where the database refused nothing. */
    public static @Nullable BrokenConstraint in(Throwable thrown) {
        for (Throwable t = thrown; t != null; t = t.getCause()) {
            if (t instanceof PSQLException told
                    && told.getServerErrorMessage() != null
                    && (String.valueOf(told.getSQLState()).startsWith("23") || TOO_LARGE.equals(told.getSQLState()))) {
                return of(told.getServerErrorMessage());
            }
        }
        return null;
    }

    /** By what the server says apart from its message, whose language is the server's own. */
    private static BrokenConstraint of(ServerErrorMessage told) {
        String constraint = said(told.getConstraint());
        String field = said(told.getColumn()).isEmpty()
                ? field(constraint, said(told.getTable()))
                : camelCase(said(told.getColumn()));
        return switch (said(told.getSQLState())) {
            case UNIQUE ->
                new BrokenConstraint(
                        Type.CONFLICT, "{field} was taken by another user. Enter another one", constraint, field);
            case CHECK -> new BrokenConstraint(Type.RULE, "{field} is not possible. Check it", constraint, field);
            case MISSING -> new BrokenConstraint(Type.RULE, "{field} is required", constraint, field);
            case FOREIGN_KEY ->
                new BrokenConstraint(
                        Type.CONFLICT, "{field} does not exist, or is in use. Open the page again", constraint, field);
            case TOO_LARGE ->
                new BrokenConstraint(Type.RULE, "A number is too large. Check every quantity and amount", "");
            case RAISED -> new BrokenConstraint(Type.CONFLICT, "The books refuse this: " + said(told.getMessage()), "");
            default -> new BrokenConstraint(Type.CONFLICT, "The database refuses this", constraint);
        };
    }

    /** {@code vehicle_license_plate_key} of {@code vehicle} is about {@code licensePlate}. */
    static String field(String constraint, String table) {
        String named = FIELDS.get(constraint);
        if (named != null) {
            return named;
        }
        String columns = constraint.replaceFirst("_(key|pkey|fkey|check|excl)\\d*$", "");
        if (!table.isEmpty() && columns.startsWith(table)) {
            columns = columns.substring(table.length()).replaceFirst("^_", "");
        }
        return columns.isEmpty() ? "id" : camelCase(columns);
    }

    private static String camelCase(String column) {
        String plain = column.endsWith("_id") ? column.substring(0, column.length() - "_id".length()) : column;
        StringBuilder field = new StringBuilder();
        for (String word : plain.split("_")) {
            field.append(
                    field.isEmpty() || word.isEmpty()
                            ? word
                            : Character.toUpperCase(word.charAt(0)) + word.substring(1));
        }
        return field.toString();
    }

    private static String said(@Nullable String part) {
        return part == null ? "" : part;
    }
}
