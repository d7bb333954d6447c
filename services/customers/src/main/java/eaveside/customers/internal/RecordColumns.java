package eaveside.customers.internal;

import eaveside.customers.CustomersRefusal;
import eaveside.kernel.CamelCase;
import eaveside.kernel.Decision;
import eaveside.kernel.Records;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The columns that a record has in files: one for each component that holds a text, a flag, a whole number or a choice, and
 * those of records within, so that a new component is read and written without being named here.
 *
 * @param <T> the record
 */
@Decision
public final class RecordColumns<T extends Record> {
    private final Class<T> type;
    private final List<Column> columns = new ArrayList<>();

    /**
     * A column, or the columns of a record within.
     *
     * @param  part   the component
     * @param  title  what the header calls it
     * @param  within the columns of a record; null for a single value
     */
    private record Column(
            RecordComponent part, String title, @Nullable RecordColumns<?> within) {}

    /** A column as it is described: the component, and its choices as they are written. */
    public record Described(String title, String component, boolean optional, List<String> choices) {}

    private RecordColumns(Class<T> type, List<String> without, UnaryOperator<String> titles) {
        this.type = type;
        for (RecordComponent part : type.getRecordComponents()) {
            if (!without.contains(part.getName())) {
                columns.add(new Column(
                        part,
                        titles.apply(CamelCase.words(part.getName(), "_")),
                        part.getType().isRecord()
                                ? new RecordColumns<>(part.getType().asSubclass(Record.class), List.of(), titles)
                                : null));
            }
        }
    }

    /**
     * The columns of a record.
     *
     * @param  without components that a file does not say
     * @param  titles  makes a column's title of its component's name, with underscores
     */
    public static <T extends Record> RecordColumns<T> of(
            Class<T> type, List<String> without, UnaryOperator<String> titles) {
        return new RecordColumns<>(type, without, titles);
    }

    public List<Described> described() {
        return columns.stream()
                .flatMap(column -> column.within() != null
                        ? column.within().described().stream()
                        : Stream.of(new Described(
                                column.title(),
                                column.part().getName(),
                                Records.isOptional(column.part()),
                                column.part().getType().isEnum()
                                        ? written(column.part().getType())
                                        : List.of())))
                .toList();
    }

    public List<String> titles() {
        return described().stream().map(Described::title).toList();
    }

    /** What the record says, a cell for each column. */
    public List<String> cells(Record record) {
        List<String> cells = new ArrayList<>();
        for (Column column : columns) {
            Object value = Records.value(column.part(), record);
            if (column.within() != null) {
                cells.addAll(column.within().cells((Record) Objects.requireNonNull(value)));
            } else {
                cells.add(text(value));
            }
        }
        return cells;
    }

    /**
     * The record that cells describe; refuses a cell that says nothing that its column can hold, and as the record does.
     *
     * @param  cells the text under a title; empty for none
     * @param  given components that the cells do not say
     */
    public T read(UnaryOperator<String> cells, Map<String, ?> given) {
        Map<String, Object> values = new HashMap<>(given);
        for (Column column : columns) {
            if (!values.containsKey(column.part().getName())) {
                String text = cells.apply(column.title());
                Object value = column.within() != null
                        ? column.within().read(cells, Map.of())
                        : value(column.part(), column.title(), text);
                if (value != null) {
                    values.put(column.part().getName(), value);
                }
            }
        }
        return Records.completed(type, values);
    }

    /** Null where the cell is empty and the record may do without. */
    private static @Nullable Object value(RecordComponent part, String title, String text) {
        Class<?> type = part.getType();
        if (text.isEmpty() && Records.isOptional(part)) {
            return null;
        }
        if (type == String.class) {
            return text;
        }
        if (type == boolean.class) {
            return flag(title, text);
        }
        if (type == int.class) {
            return whole(title, text);
        }
        if (type.isEnum()) {
            return choice(type, title, text);
        }
        throw new IllegalStateException("no column can hold " + part);
    }

    static boolean flag(String title, String text) {
        return switch (text.toLowerCase(Locale.ROOT)) {
            case "yes", "true", "1" -> true;
            case "no", "false", "0" -> false;
            default -> throw new CustomersRefusal.BadCell(title, text, "yes or no");
        };
    }

    static int whole(String title, String text) {
        try {
            return Integer.parseInt(text);
        } catch (NumberFormatException e) {
            throw new CustomersRefusal.BadCell(title, text, "a whole number");
        }
    }

    static <E> E choice(Class<E> type, String title, String text) {
        for (E constant : type.getEnumConstants()) {
            if (text(constant).equalsIgnoreCase(text)) {
                return constant;
            }
        }
        throw new CustomersRefusal.BadCell(title, text, String.join(" or ", written(type)));
    }

    private static List<String> written(Class<?> type) {
        return Stream.of(type.getEnumConstants()).map(RecordColumns::text).collect(Collectors.toList());
    }

    static String text(@Nullable Object value) {
        return switch (value) {
            case null -> "";
            case Boolean flag -> flag ? "yes" : "no";
            case Enum<?> choice -> choice.name().toLowerCase(Locale.ROOT);
            default -> value.toString();
        };
    }
}
