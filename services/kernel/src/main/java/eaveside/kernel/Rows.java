package eaveside.kernel;

import java.util.List;
import java.util.function.ObjIntConsumer;
import java.util.function.Supplier;

/**
 * The elements of a command's list, one after the other: what is refused says which element is concerned, so that people see it
 * at its row and scripts read {@code lines[2].quantity}.
 */
public final class Rows {
    private Rows() {}

    /**
     * Does the work for each element.
     *
     * @param  list the name of the command's component
     */
    public static <T> void each(String list, List<T> elements, ObjIntConsumer<T> work) {
        for (int i = 0; i < elements.size(); i++) {
            int index = i;
            at(list, index, () -> {
                work.accept(elements.get(index), index);
                return index;
            });
        }
    }

    /** What is done as part of another command, which does not have these rows: a refusal is about its fields alone. */
    public static <R> R ofAnother(Supplier<R> work) {
        try {
            return work.get();
        } catch (Refusal refusal) {
            throw refusal.placed("");
        }
    }

    /** What is made of one element. */
    public static <R> R at(String list, int index, Supplier<R> work) {
        try {
            return work.get();
        } catch (Refusal refusal) {
            throw refusal.placed(list + "[" + index + "].");
        }
    }
}
