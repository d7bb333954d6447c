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
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
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
        Notation notation = fields.notation();
        if (field.element() == Quantity.class) {
            return Quantity.of(notation.decimal(path, text), unit(path));
        }
        if (field.element() == UnitPrice.class) {
            return new UnitPrice(notation.currency(), notation.decimal(path, text), per(path));
        }
        return field.scalar().typed().read(path, text, notation);
    }

    private Quantity per(String path) {
        String typed = fields.typed(path + PER);
        Quantity per = Quantity.of(
                typed.isBlank() ? BigDecimal.ONE : fields.notation().decimal(path + PER, typed), unit(path));
        if (!per.isPositive()) {
            throw new KernelRefusal.NotPositive(path + PER);
        }
        return per;
    }

    private Unit unit(String path) {
        String chosen = fields.typed(path + UNIT);
        return chosen.isEmpty() ? units.apply(path) : Unit.ofCode(chosen);
    }

    @Override
    List<Object> several(String path, Shape.Field field) {
        List<Object> values = new ArrayList<>();
        for (String text : fields.all(path)) {
            if (!text.isBlank()) {
                Object value = noted("", () -> field.scalar().typed().read(path, text, fields.notation()));
                if (value != null) {
                    values.add(value);
                }
            }
        }
        return values;
    }

    /** Rows in which nothing was entered are left out; an id that the form itself made is nothing entered. */
    @Override
    List<String> rows(String path, Shape.Field field) {
        String base = path.substring(0, path.length() - field.name().length()) + field.row();
        List<String> rows = new ArrayList<>();
        for (int number : fields.rows(base)) {
            String prefix = base + "-" + number + "-";
            if (isFilled(prefix, field.shape())) {
                rows.add(prefix);
            }
        }
        return rows;
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
        String prefix = path.substring(0, path.length() - field.name().length());
        return field.optional() && !isFilled(prefix, field.shape()) ? null : prefix;
    }

    @Override
    String path(String prefix, String name) {
        return prefix + name;
    }

    @Override
    Map<Enum<?>, Object> byConstant(String path, Shape.Field field) {
        String prefix = path.substring(0, path.length() - field.name().length());
        Map<Enum<?>, Object> values = new LinkedHashMap<>();
        for (Enum<?> key : field.keys()) {
            String at = prefix + key.name();
            String text = fields.typed(at);
            if (!text.isBlank()) {
                Object value = noted("", () -> field.scalar().typed().read(at, text, fields.notation()));
                if (value != null) {
                    values.put(key, value);
                }
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
        MultivaluedMap<String, String> typed = new MultivaluedHashMap<>();
        show("", record, notation, measured, typed);
        return typed;
    }

    private static void show(
            String prefix,
            Record record,
            Notation notation,
            UnaryOperator<Quantity> measured,
            MultivaluedMap<String, String> typed) {
        Map<String, @Nullable Object> values = Records.values(record);
        for (Shape.Field field : Shape.of(record.getClass()).fields()) {
            Object value = values.get(field.name());
            if (value != null) {
                show(prefix, field, value, notation, measured, typed);
            }
        }
    }

    private static void show(
            String prefix,
            Shape.Field field,
            Object value,
            Notation notation,
            UnaryOperator<Quantity> measured,
            MultivaluedMap<String, String> typed) {
        String path = prefix + field.name();
        switch (field.type()) {
            case SINGLE -> {
                if (value instanceof Quantity kept) {
                    Quantity quantity = measured.apply(kept);
                    typed.putSingle(path, field.scalar().text(quantity, notation));
                    typed.putSingle(path + UNIT, quantity.unit().code());
                } else {
                    typed.putSingle(path, field.scalar().text(value, notation));
                }
                if (value instanceof UnitPrice price && price.base().value().compareTo(BigDecimal.ONE) != 0) {
                    typed.putSingle(path + PER, notation.plain(price.base().value()));
                }
            }
            case PART -> show(prefix, (Record) value, notation, measured, typed);
            case SEVERAL ->
                ((Collection<?>) value)
                        .forEach(one -> typed.add(path, field.scalar().text(one, notation)));
            case ROWS -> {
                int number = 0;
                for (Object row : (Collection<?>) value) {
                    show(prefix + field.row() + "-" + number++ + "-", (Record) row, notation, measured, typed);
                }
            }
            case BY_CONSTANT ->
                ((Map<?, ?>) value)
                        .forEach((key, one) -> typed.putSingle(
                                prefix + ((Enum<?>) key).name(), field.scalar().text(one, notation)));
        }
    }
}
