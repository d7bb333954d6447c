package eaveside.web.prices;

import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.LineMinimum;
import eaveside.pricing.PriceList;
import eaveside.pricing.QuantityStep;
import eaveside.pricing.ServiceItemPrice;
import eaveside.pricing.Surcharge;
import eaveside.web.forms.Fields;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/**
 * The form of a draft: its fields' names, filled from a price list and read into one. A service whose steps are left
 * empty is not in the book, a line whose minimum is left empty has none.
 */
final class PriceForm {
    private static final String LINE = "line";
    private static final String SERVICE_ITEM = "serviceItem";

    private final List<ServiceLine> lines;
    private final List<ServiceItem> serviceItems;
    private final CurrencyUnit currency;

    PriceForm(List<ServiceLine> lines, List<ServiceItem> serviceItems, CurrencyUnit currency) {
        this.lines = lines;
        this.serviceItems = serviceItems;
        this.currency = currency;
    }

    Map<String, String> filled(PriceList list) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("name", list.name());
        values.put("from", list.from().toString());
        values.put("visitMinimum", plain(list.visitMinimum().amount()));
        values.put("sharedReduction", plain(list.sharedReduction().value()));
        for (int i = 0; i < lines.size(); i++) {
            int row = i;
            values.put(LINE + "-" + row, lines.get(row).id().toString());
            list.minimumOf(lines.get(row).id())
                    .ifPresent(m -> values.put(minimum(row), plain(m.amount().amount())));
        }
        for (int i = 0; i < serviceItems.size(); i++) {
            int row = i;
            values.put(serviceItem(row), serviceItems.get(row).id().toString());
            list.priceOf(serviceItems.get(row).id()).ifPresent(price -> fill(values, row, price));
        }
        return values;
    }

    private static void fill(Map<String, String> values, int row, ServiceItemPrice price) {
        values.put(per(row), plain(price.base().value()));
        for (int k = 0; k < price.steps().size(); k++) {
            QuantityStep step = price.steps().get(k);
            values.put(steps(row) + "-" + k + "-from", plain(step.from().value()));
            values.put(steps(row) + "-" + k + "-price", plain(step.price().amount()));
        }
        for (int k = 0; k < price.surcharges().size(); k++) {
            Surcharge surcharge = price.surcharges().get(k);
            String prefix = extras(row) + "-" + k + "-";
            values.put(prefix + "attribute", surcharge.attribute().name());
            values.put(prefix + "atLeast", String.valueOf(surcharge.atLeast()));
            switch (surcharge.rate()) {
                case Surcharge.OfPrice share ->
                    values.put(prefix + "percent", plain(share.percent().value()));
                case Surcharge.PerUnit fixed ->
                    values.put(prefix + "amount", plain(fixed.amount().amount()));
            }
        }
    }

    /**
     * Reads everything and notes what is wrong with it; the list itself is made when it is asked for, so that what it
     * refuses as a whole is noted where the form is run.
     */
    Supplier<PriceList> read(Fields fields, LocalDate today) {
        String name = fields.text("name");
        LocalDate from = fields.date("from", today);
        Money visitMinimum =
                fields.typed("visitMinimum").isBlank() ? Money.zero(currency) : fields.money("visitMinimum", currency);
        Percent reduction =
                fields.typed("sharedReduction").isBlank() ? Percent.of("0") : percent(fields, "sharedReduction");
        List<LineMinimum> minimums = new ArrayList<>();
        for (Map.Entry<ServiceLine, Integer> row : lineRows(fields).entrySet()) {
            ServiceLineId line = row.getKey().id();
            String field = minimum(row.getValue());
            if (!fields.typed(field).isBlank()) {
                Money amount = fields.money(field, currency);
                add(minimums, fields.made(field, () -> new LineMinimum(line, amount)));
            }
        }
        List<ServiceItemPrice> prices = new ArrayList<>();
        serviceItemRows(fields).forEach((serviceItem, row) -> add(prices, price(fields, row, serviceItem)));
        return () -> new PriceList(name, from, visitMinimum, reduction, minimums, prices);
    }

    /**
     * The number that each service line has in the names of the fields. The form itself says so, since the catalog may
     * change while somebody writes; what the form does not know yet comes after.
     */
    Map<ServiceLine, Integer> lineRows(Fields fields) {
        return numbered(fields, LINE, lines, line -> line.id().toString());
    }

    /** The number of each service, likewise. */
    Map<ServiceItem, Integer> serviceItemRows(Fields fields) {
        return numbered(
                fields,
                SERVICE_ITEM,
                serviceItems,
                serviceItem -> serviceItem.id().toString());
    }

    private static <T> Map<T, Integer> numbered(Fields fields, String prefix, List<T> all, Function<T, String> id) {
        Map<String, Integer> known = new HashMap<>();
        int next = 0;
        for (int row : fields.rows(prefix)) {
            known.put(fields.typed(prefix + "-" + row), row);
            next = row + 1;
        }
        Map<T, Integer> numbers = new LinkedHashMap<>();
        for (T one : all) {
            Integer row = known.get(id.apply(one));
            numbers.put(one, row == null ? next++ : row);
        }
        return numbers;
    }

    private @Nullable ServiceItemPrice price(Fields fields, int row, ServiceItem serviceItem) {
        Quantity base = fields.typed(per(row)).isBlank()
                ? Quantity.of(BigDecimal.ONE, serviceItem.unit())
                : fields.quantity(per(row), serviceItem.unit());
        if (!base.isPositive()) {
            fields.wrong(per(row), "prices.per-above-zero");
            return null;
        }
        List<QuantityStep> steps = new ArrayList<>();
        for (int k : fields.rows(steps(row))) {
            String prefix = steps(row) + "-" + k + "-";
            if (!fields.typed(prefix + "price").isBlank()
                    || !fields.typed(prefix + "from").isBlank()) {
                add(steps, step(fields, prefix, base));
            }
        }
        List<Surcharge> surcharges = new ArrayList<>();
        for (int k : fields.rows(extras(row))) {
            String prefix = extras(row) + "-" + k + "-";
            if (!fields.typed(prefix + "attribute").isBlank()) {
                add(surcharges, surcharge(fields, prefix, base));
            }
        }
        if (steps.isEmpty() && surcharges.isEmpty()) {
            return null;
        }
        ServiceItemId id = serviceItem.id();
        return fields.made(serviceItem(row), () -> new ServiceItemPrice(id, steps, surcharges));
    }

    private @Nullable QuantityStep step(Fields fields, String prefix, Quantity base) {
        Quantity from = fields.typed(prefix + "from").isBlank()
                ? Quantity.zero(base.unit())
                : fields.quantity(prefix + "from", base.unit());
        BigDecimal amount = fields.decimal(prefix + "price");
        return fields.error(prefix + "price") != null
                ? null
                : fields.made(prefix + "price", () -> new QuantityStep(from, new UnitPrice(currency, amount, base)));
    }

    private @Nullable Surcharge surcharge(Fields fields, String prefix, Quantity base) {
        SurfaceAttribute attribute = fields.choice(prefix + "attribute", SurfaceAttribute.class);
        if (attribute == null) {
            return null;
        }
        int atLeast = fields.integer(prefix + "atLeast", attribute.lowest(), attribute.highest());
        boolean share = !fields.typed(prefix + "percent").isBlank();
        boolean fixed = !fields.typed(prefix + "amount").isBlank();
        if (share == fixed) {
            fields.wrong(prefix + "percent", "prices.percent-or-amount");
            return null;
        }
        if (share) {
            Percent percent = percent(fields, prefix + "percent");
            return fields.error(prefix + "percent") != null
                    ? null
                    : fields.made(
                            prefix + "percent",
                            () -> new Surcharge(attribute, atLeast, new Surcharge.OfPrice(percent)));
        }
        BigDecimal amount = fields.decimal(prefix + "amount");
        return fields.error(prefix + "amount") != null
                ? null
                : fields.made(
                        prefix + "amount",
                        () -> new Surcharge(
                                attribute, atLeast, new Surcharge.PerUnit(new UnitPrice(currency, amount, base))));
    }

    private static Percent percent(Fields fields, String field) {
        BigDecimal value = fields.decimal(field);
        Percent percent = fields.made(field, () -> Percent.of(value));
        return percent == null ? Percent.of("0") : percent;
    }

    private static <T> void add(List<T> to, @Nullable T made) {
        if (made != null) {
            to.add(made);
        }
    }

    private static String plain(BigDecimal value) {
        return value.toPlainString();
    }

    static String line(int row) {
        return LINE + "-" + row;
    }

    static String minimum(int row) {
        return "minimum-" + row;
    }

    static String serviceItem(int row) {
        return SERVICE_ITEM + "-" + row;
    }

    static String per(int row) {
        return "per-" + row;
    }

    /** The row's own number comes last in the names of the nested rows: that is the one that a copied row changes. */
    static String steps(int row) {
        return "steps" + row;
    }

    static String extras(int row) {
        return "extras" + row;
    }
}
