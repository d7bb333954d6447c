package eaveside.kernel;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ObjIntConsumer;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * The elements of a command's list, one after the other: what is refused of an element's own fields says which element is
 * concerned, so that people see it at its row and scripts read {@code lines[2].quantity}. A field that the element does not
 * have, such as the command's date, keeps its name.
 */
public final class Elements {
    private Elements() {}

    /**
     * Does the work for each element.
     *
     * @param  list the name of the command's component
     */
    public static <T extends Record> void each(String list, List<T> elements, ObjIntConsumer<T> work) {
        for (int i = 0; i < elements.size(); i++) {
            int index = i;
            at(list, elements, index, () -> {
                work.accept(elements.get(index), index);
                return index;
            });
        }
    }

    /**
     * Refuses each element that names what one before it has named, at its place.
     *
     * @param  key   the name of the component that names it
     * @param  named what that is, in lowercase where people do not distinguish case
     */
    public static <T extends Record> void requireDistinct(
            String list, List<T> elements, String key, Function<T, ?> named) {
        Check check = new Check();
        Set<Object> before = new HashSet<>();
        for (int i = 0; i < elements.size(); i++) {
            String field = list + "[" + i + "]." + key;
            check.that(before.add(named.apply(elements.get(i))), () -> new KernelRefusal.Twice(field));
        }
        check.done();
    }

    /** What is made of one of the elements. */
    public static <R> R at(String list, List<? extends Record> elements, int index, Supplier<R> work) {
        try {
            return work.get();
        } catch (Refusal refusal) {
            throw placed(list + "[" + index + "].", elements.get(index), refusal);
        }
    }

    /** What is made of a part of a command: what is refused of its fields says so, {@code scope.validUntil}. */
    public static <R> R inside(String component, Record part, Supplier<R> work) {
        try {
            return work.get();
        } catch (Refusal refusal) {
            throw placed(component + ".", part, refusal);
        }
    }

    /** Work on a part of a command, likewise. */
    public static void inside(String component, Record part, Runnable work) {
        inside(component, part, () -> {
            work.run();
            return part;
        });
    }

    /** What another command does as a part of this one, whose list is called otherwise here. */
    public static <R> R within(String list, String here, Supplier<R> work) {
        try {
            return work.get();
        } catch (Refusal refusal) {
            throw refusal.moved(list, here);
        }
    }

    /**
     * What an element was made of.
     *
     * @param  element such as {@code mixes[0]}
     * @param  names   what it calls the fields that are called otherwise here
     */
    public record Origin(String element, Map<String, String> names) {
        public Origin {
            names = Map.copyOf(names);
        }

        public static Origin of(String list, int index, Map<String, String> names) {
            return new Origin(list + "[" + index + "]", names);
        }
    }

    /** What another command does as a part of this one, whose elements are each made of one of several lists here. */
    public static <R> R of(String list, List<Origin> origins, Supplier<R> work) {
        try {
            return work.get();
        } catch (Refusal refusal) {
            for (int i = 0; i < origins.size(); i++) {
                Origin origin = origins.get(i);
                refusal.moved(list + "[" + i + "]", origin.element(), origin.names());
            }
            throw refusal;
        }
    }

    private static Refusal placed(String place, Record element, Refusal refusal) {
        Set<String> fields = Arrays.stream(element.getClass().getRecordComponents())
                .map(RecordComponent::getName)
                .collect(Collectors.toSet());
        return byConstant(element.getClass(), refusal).placed(place, fields);
    }

    /** What is refused of a value by its constant alone, {@code STORY}, under the component that holds it: {@code attributes.STORY}. */
    public static Refusal byConstant(Class<?> type, Refusal refusal) {
        for (RecordComponent part : type.getRecordComponents()) {
            if (part.getGenericType() instanceof ParameterizedType map
                    && map.getRawType() == Map.class
                    && map.getActualTypeArguments()[0] instanceof Class<?> keys
                    && keys.isEnum()) {
                for (Object key : keys.getEnumConstants()) {
                    String constant = ((Enum<?>) key).name();
                    refusal.called(constant, part.getName() + "." + constant);
                }
            }
        }
        return refusal;
    }
}
