package eaveside.kernel;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Looks at the parts of a record while its constructor runs and refuses all that is wrong with them at once, so that
 * whoever filled in a form mends everything in one go. A constructor makes one, passes each part through it and ends
 * with {@link #done}.
 *
 * <pre>{@code
 * var check = new Check();
 * name = check.required("name", name, 200);
 * note = check.optional("note", note, 2000);
 * check.between("days", days, 0, 365);
 * check.done();
 * }</pre>
 */
public final class Check {
    private final List<Refusal> refusals = new ArrayList<>();

    /** The text without surrounding blanks; a missing, empty or overlong one is refused. */
    public String required(String field, @Nullable String text, int longest) {
        return value(() -> Texts.required(field, text, longest), "");
    }

    /** The text without surrounding blanks, empty where missing; an overlong one is refused. */
    public String optional(String field, @Nullable String text, int longest) {
        return value(() -> Texts.optional(field, text, longest), "");
    }

    /** Refuses a number outside of the two, which are themselves allowed. */
    public void between(String field, int number, int lowest, int highest) {
        if (number < lowest || number > highest) {
            refusals.add(new KernelRefusal.OutOfRange(field, number, lowest, highest));
        }
    }

    /** What the manufacturer answers, or the stand-in where it refuses: the refusal is kept until {@link #done}. */
    public <T> T value(Supplier<T> manufacturer, T standIn) {
        try {
            return manufacturer.get();
        } catch (Refusal refusal) {
            refusals.add(refusal);
            return standIn;
        }
    }

    /** Keeps what is refused meanwhile. */
    public void passes(Runnable check) {
        try {
            check.run();
        } catch (Refusal refusal) {
            refusals.add(refusal);
        }
    }

    /** Keeps the refusal where the condition does not hold. */
    public void that(boolean holds, Supplier<? extends Refusal> refusal) {
        if (!holds) {
            refusals.add(refusal.get());
        }
    }

    /** Refuses what was found: a single refusal as itself, several as {@link KernelRefusal.Several}. */
    public void done() {
        if (refusals.size() == 1) {
            throw refusals.getFirst();
        }
        if (!refusals.isEmpty()) {
            throw new KernelRefusal.Several(refusals);
        }
    }
}
