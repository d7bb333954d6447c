package eaveside.kernel;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * A named "no". Every module has one sealed family of these; each is mapped once, by its {@link Type}, to an answer
 * (problem JSON for scripts, a page with the fields marked for people). Unchecked, so that the transaction of the
 * use case rolls back and nothing is left half-written.
 */
public abstract class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1;

    /** What sort of no it is, with the HTTP status that says the same. */
    public enum Type {
        MALFORMED(400),
        FORBIDDEN(403),
        NOT_FOUND(404),
        CONFLICT(409),
        RULE(422);

        private final int status;

        Type(int status) {
            this.status = status;
        }

        public int status() {
            return status;
        }
    }

    private final Type type;
    private final transient List<String> fields;
    private transient Map<String, String> places = Map.of();
    private transient Map<String, String> called = Map.of();

    /**
     * @param  message plain English, for the person who can mend it; no stack, no SQL; {@code {field}} in it stands for
     *                the name of the first field
     * @param  fields  the names of the inputs concerned, as the caller named them; may be empty
     */
    protected Refusal(Type type, String message, String... fields) {
        super(message, null, false, true);
        this.type = type;
        this.fields = List.of(fields);
    }

    public Type type() {
        return type;
    }

    public List<String> fields() {
        return fields == null
                ? List.of()
                : fields.stream()
                        .map(field -> {
                            String name = called.getOrDefault(field, field);
                            return places.getOrDefault(first(field), places.getOrDefault(first(name), "")) + name;
                        })
                        .toList();
    }

    /** A part of a field, {@code price.gross}, lies where the field does. */
    private static String first(String field) {
        return field.replaceFirst("[.\\[].*", "");
    }

    /** The same where some of its fields lie within something: {@code quantity} is now {@code lines[2].quantity}. */
    Refusal placed(String before, Set<String> within) {
        Map<String, String> all = new HashMap<>();
        within.forEach(field -> all.put(field, before));
        places.forEach((field, place) -> all.put(field, before + place));
        places = Map.copyOf(all);
        return this;
    }

    /** The same where a command's list is another's: {@code lines[2]} is {@code count.counted[2]}. */
    Refusal moved(String list, String to) {
        move(list, list + "[", to);
        return this;
    }

    /** The same where an element is made of another: {@code draws[3].quantity} is {@code mixes[0].volume}. */
    Refusal moved(String element, String to, Map<String, String> names) {
        call(move(element, element + ".", to), names);
        return this;
    }

    /** Moves what lies there, and says which fields do. */
    private Set<String> move(String from, String beginning, String to) {
        Map<String, String> all = new HashMap<>(places);
        Set<String> moved = new HashSet<>();
        places.forEach((field, place) -> {
            if (place.startsWith(beginning)) {
                all.put(field, to + place.substring(from.length()));
                moved.add(field);
            }
        });
        places = Map.copyOf(all);
        return moved;
    }

    /** The same where a command calls a field otherwise: {@code date} is {@code completedOn}. */
    public Refusal called(String field, String name) {
        call(places.containsKey(field) ? Set.of() : Set.of(field), Map.of(field, name));
        return this;
    }

    private void call(Set<String> which, Map<String, String> names) {
        Map<String, String> all = new HashMap<>(called);
        names.forEach((field, name) -> {
            if (which.contains(field)) {
                all.putIfAbsent(field, name);
            }
        });
        called = Map.copyOf(all);
    }

    /** What is wrong with one field, in words that hold {@link #FIELD} where its name goes; no field where it is none's. */
    public record Problem(String field, String pattern) {
        /** The words with the name that the reader knows the field by. */
        public String text(String label) {
            return pattern.replace(FIELD, label);
        }
    }

    /** Stands for the name of the field in a message. */
    public static final String FIELD = "{field}";

    /** The message for whoever knows a field by no other name than its own; never absent on a refusal. */
    public String text() {
        return named(words(field())).replace('\u00a0', ' ');
    }

    /** The same for a page, which knows quantities by their gap ({@link Quantity#said}) and people no paths. */
    public String said() {
        String field = field();
        return named(words(field.substring(field.lastIndexOf('.') + 1)));
    }

    private String field() {
        return fields().isEmpty() ? "" : fields().getFirst();
    }

    private String named(String words) {
        String message = super.getMessage();
        return message == null ? "" : message.replace(FIELD, words.isEmpty() ? "This" : words);
    }

    /** A field's own name as words, {@code Payment term days}; a path within a body as it is. */
    private static String words(String field) {
        return field.matches("[a-z][A-Za-z]*")
                ? field.substring(0, 1).toUpperCase(Locale.ROOT)
                        + CamelCase.words(field, " ").substring(1)
                : field;
    }

    @Override
    public String getMessage() {
        return text();
    }

    /** What else a script may want to know, by name: values of the program, no texts. */
    public Map<String, Object> details() {
        return Map.of();
    }

    /** One for each field concerned, or a single one without a field. */
    public List<Problem> problems() {
        String message = super.getMessage();
        String pattern = message == null ? "" : message;
        return fields().isEmpty()
                ? List.of(new Problem("", pattern))
                : fields().stream().map(field -> new Problem(field, pattern)).toList();
    }

    /** A stable name for scripts and message bundles, from the class: {@code VisitRefusal.AlreadyDone} is {@code visit.already-done}. */
    public String code() {
        Class<?> outer = getClass().getEnclosingClass();
        String family = outer == null ? "" : dashed(outer.getSimpleName().replace("Refusal", "")) + ".";
        return family + dashed(getClass().getSimpleName());
    }

    private static String dashed(String camel) {
        return CamelCase.words(camel, "-");
    }
}
