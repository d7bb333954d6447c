package eaveside.kernel;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * One page of a list that pages by key: its rows and, where more follow, the key to ask for the next page with. There
 * is no total: counting would grow with the company's age.
 */
public record Slice<T>(List<T> rows, @Nullable String next) {
    public Slice {
        rows = List.copyOf(rows);
    }

    /** From up to {@code size + 1} rows read: the extra row only tells that more follow. */
    public static <T> Slice<T> of(List<T> read, int size, Function<T, String> key) {
        return read.size() > size
                ? new Slice<>(read.subList(0, size), key.apply(read.get(size - 1)))
                : new Slice<>(read, null);
    }

    public <R> Slice<R> map(Function<? super T, R> f) {
        return new Slice<>(rows.stream().<R>map(f).toList(), next);
    }
}
