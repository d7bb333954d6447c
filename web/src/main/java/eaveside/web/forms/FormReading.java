package eaveside.web.forms;

import eaveside.kernel.Id;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.web.Notation;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * Reads a record from the fields of a form and shows one in them. The field of a component bears its name; those of rows
 * are called {@code line-0-quantity}; a quantity's unit may come from a field of its own, {@code quantityUnit}, and so may
 * the quantity that a unit price is for, {@code pricePer}: one where it is blank.
 */
final class FormReading extends Reading {
    static final String UNIT = "Unit";

    private static final String PER = "Per";

    private final Fields fields;
    private final Function<String, Unit> units;

    /** @param  units the unit of a quantity or unit price whose form has no field for it, by the path of its field */
    FormReading(Fields fields, Function<String, Unit> units) {
        this.fields = fields;
        this.units = units;
    }

    @Override
    @Nullable
    Object single(String path, Shape.Field field) {
        if (field.isFlag()) {
            return fields.ticked(path);
        }
        String text = fields.typed(path);
        if (text.isBlank()) {
            return null;
        }
        if (field.element() == Quantity.class) {
            return Scalar.named(
                    path,
                    () -> Quantity.of(fields.notation().decimal(path, text), unit(path))
                            .bounded(""));
        }
        if (field.element() == UnitPrice.class) {
            Quantity per = per(path);
            return Scalar.named(
                    path,
                    () -> new UnitPrice(
                                    fields.notation().currency(),
                                    fields.notation().amount(path, text),
                                    per)
                            .bounded(""));
        }
        return read(path, field, text);
    }

    private Object read(String path, Shape.Field field, String text) {
        return field.scalar().typed().read(path, text, fields.notation());
    }

    private Quantity per(String path) {
        String typed = fields.typed(path + PER);
        BigDecimal count = typed.isBlank() ? BigDecimal.ONE : fields.notation().decimal(path + PER, typed);
        Quantity per =
                Scalar.named(path + PER, () -> Quantity.of(count, unit(path)).bounded(""));
        if (!per.isPositive()) {
            throw new KernelRefusal.NotPositive(path + PER);
        }
        return per;
    }

    private Unit unit(String path) {
        String chosen = fields.typed(path + UNIT);
        return chosen.isEmpty() ? units.apply(path) : Scalar.at(path + UNIT, () -> Unit.ofCode(chosen));
    }

    @Override
    List<Supplier<Object>> several(String path, Shape.Field field) {
        return fields.all(path).stream()
                .filter(text -> !text.isBlank())
                .<Supplier<Object>>map(text -> () -> read(path, field, text))
                .toList();
    }

    /** Rows in which nothing was entered are left out; an id that the form itself made is nothing entered. */
    @Override
    List<String> rows(String path, Shape.Field field) {
        String base = beside(path, field) + field.row();
        return fields.rows(base).stream()
                .map(number -> base + "-" + number + "-")
                .filter(row -> isFilled(row, field.shape()))
                .toList();
    }

    /** What the names of the fields beside one begin with. */
    private static String beside(String path, Shape.Field field) {
        return path.substring(0, path.length() - field.name().length());
    }

    private boolean isFilled(String prefix, Shape<?> shape) {
        return shape.fields().stream().anyMatch(field -> switch (field.type()) {
            case SINGLE ->
                !(Id.class.isAssignableFrom(field.element()) && field.name().equals("id"))
                        && !field.isFlag()
                        && !fields.typed(prefix + field.name()).isBlank();
            case PART -> isFilled(prefix, field.shape());
            case SEVERAL -> fields.all(prefix + field.name()).stream().anyMatch(text -> !text.isBlank());
            case ROWS -> !rows(prefix + field.name(), field).isEmpty();
            case BY_CONSTANT ->
                field.keys().stream()
                        .anyMatch(key -> !fields.typed(prefix + key.name()).isBlank());
        });
    }

    /** The fields of a part stand beside those of the record that it is a part of; an optional one may be all blank. */
    @Override
    @Nullable
    String part(String path, Shape.Field field) {
        String prefix = beside(path, field);
        return field.optional() && !isFilled(prefix, field.shape()) ? null : prefix;
    }

    @Override
    Map<Enum<?>, Supplier<Object>> byConstant(String path, Shape.Field field) {
        Map<Enum<?>, Supplier<Object>> values = new LinkedHashMap<>();
        for (Enum<?> key : field.keys()) {
            String at = beside(path, field) + key.name();
            String text = fields.typed(at);
            if (!text.isBlank()) {
                values.put(key, () -> read(at, field, text));
            }
        }
        return values;
    }

    /** An unchecked box is an answer: no. */
    @Override
    @Nullable
    Object unsent(Shape.Field field) {
        return field.isFlag() ? Boolean.FALSE : null;
    }

    /**
     * The record as its form would send it.
     *
     * @param  measured turns a quantity into what the form counts in
     */
    static MultivaluedMap<String, String> shown(Record record, Notation notation, UnaryOperator<Quantity> measured) {
        Showing showing = new Showing(notation, measured, new MultivaluedHashMap<>());
        showing.show("", record);
        return showing.typed;
    }

    private record Showing(Notation notation, UnaryOperator<Quantity> measured, MultivaluedMap<String, String> typed) {
        void show(String prefix, Record record) {
            Map<String, @Nullable Object> values = Records.values(record);
            for (Shape.Field field : Shape.of(record.getClass()).fields()) {
                Object value = values.get(field.name());
                if (value != null) {
                    show(prefix, field, value);
                }
            }
        }

        private void show(String prefix, Shape.Field field, Object value) {
            String path = prefix + field.name();
            switch (field.type()) {
                case SINGLE -> single(path, field, value);
                case PART -> show(prefix, (Record) value);
                case SEVERAL -> ((Collection<?>) value).forEach(one -> typed.add(path, text(field, one)));
                case ROWS -> {
                    int number = 0;
                    for (Object row : (Collection<?>) value) {
                        show(prefix + field.row() + "-" + number++ + "-", (Record) row);
                    }
                }
                case BY_CONSTANT ->
                    ((Map<?, ?>) value)
                            .forEach((key, one) -> typed.putSingle(prefix + ((Enum<?>) key).name(), text(field, one)));
            }
        }

        private void single(String path, Shape.Field field, Object kept) {
            Object value = kept instanceof Quantity quantity ? measured.apply(quantity) : kept;
            typed.putSingle(path, text(field, value));
            if (value instanceof Quantity quantity) {
                typed.putSingle(path + UNIT, quantity.unit().code());
            } else if (value instanceof UnitPrice price && price.base().value().compareTo(BigDecimal.ONE) != 0) {
                typed.putSingle(path + PER, notation.plain(price.base().value()));
            }
        }

        private String text(Shape.Field field, Object value) {
            return field.scalar().text(value, notation);
        }
    }
}
