package eaveside.web.prices;

import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Id;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.pricing.PriceBookDraft;
import eaveside.pricing.ServiceItemPrice;
import eaveside.web.Notation;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * The rows around a draft's form: one for each service line and each service that is or was ever sold. A service whose rows
 * are left empty is not in the book, a service line whose minimum is left empty has none.
 */
public final class DraftForm {
    private static final String PRICE = "price";
    private static final String MINIMUM = "lineMinimum";

    private final Form<PriceBookDraft> form;
    private final Fields fields;
    private final Map<ServiceLine, Integer> lines;
    private final List<Row> rows;

    DraftForm(Form<PriceBookDraft> form, Catalog catalog) {
        this.form = form.labeled("prices");
        this.fields = form.fields();
        this.lines = numbered(MINIMUM, "serviceLine", catalog.lines(), ServiceLine::id);
        this.rows = numbered(PRICE, "serviceItem", catalog.serviceItems(), ServiceItem::id).entrySet().stream()
                .map(item -> new Row(item.getValue(), item.getKey(), fields))
                .toList();
    }

    /** What a list says beyond its record: what each price is for. */
    static Map<String, String> beside(List<ServiceItemPrice> prices, Notation notation) {
        Map<String, String> values = new HashMap<>();
        for (int i = 0; i < prices.size(); i++) {
            Quantity base = prices.get(i).base();
            values.put(PRICE + "-" + i + "-per", notation.plain(base.value()));
            values.put(PRICE + "-" + i + "-unit", base.unit().code());
        }
        return values;
    }

    /**
     * The number that each thing has in the names of the fields. The form itself says so, since the catalog may change while
     * somebody writes; what the form does not know yet comes after.
     */
    private <T> Map<T, Integer> numbered(String prefix, String name, List<T> all, Function<T, Id> id) {
        Map<String, Integer> known = new HashMap<>();
        int next = 0;
        for (int row : fields.rows(prefix)) {
            known.put(fields.typed(prefix + "-" + row + "-" + name), row);
            next = row + 1;
        }
        Map<T, Integer> numbers = new LinkedHashMap<>();
        for (T one : all) {
            Integer row = known.get(id.apply(one).toString());
            numbers.put(one, row == null ? next++ : row);
        }
        return numbers;
    }

    /** The form as it counts: without the rows that are left empty, each price for what its row says. */
    Form<PriceBookDraft> counted(PriceBookId id) {
        List<String> empty = new ArrayList<>();
        Map<String, String> per = new HashMap<>();
        lines.values().stream()
                .filter(row -> fields.typed(MINIMUM + "-" + row + "-amount").isBlank())
                .forEach(row -> empty.add(MINIMUM + "-" + row + "-serviceLine"));
        for (Row row : rows) {
            if (row.isPriced()) {
                String base = row.per();
                row.filled(row.steps()).forEach(k -> per.put(row.steps() + "-" + k + "-pricePer", base));
                row.filled(row.surcharges()).forEach(k -> per.put(row.surcharges() + "-" + k + "-amountPer", base));
            } else {
                empty.add(row.prefix() + "serviceItem");
            }
        }
        return Form.sent(PriceBookDraft.class, fields.completedBy(per))
                .given("id", id)
                .ignoring(empty)
                .in(path -> row(path)
                        .orElseThrow(() -> new KernelRefusal.Unfit(path, "{field} is for nothing that is sold"))
                        .unit());
    }

    private Optional<Row> row(String path) {
        return rows.stream().filter(row -> path.startsWith(row.prefix())).findFirst();
    }

    public Form<PriceBookDraft> form() {
        return form;
    }

    public Map<ServiceLine, Integer> lines() {
        return lines;
    }

    /** The services of a line: those still sold, and those that the book prices all the same. */
    public List<Row> of(ServiceLine line) {
        return rows.stream()
                .filter(row -> row.serviceItem().serviceLine().equals(line.id()))
                .filter(row -> row.serviceItem().active() || row.isPriced())
                .toList();
    }

    public boolean isEmpty() {
        return rows.isEmpty();
    }

    /** What the fields of rows are called, each with its service or service line. */
    public Map<String, String> labels(View view) {
        Map<String, String> labels = new HashMap<>();
        lines.forEach(
                (line, row) -> labels.put(MINIMUM + "-" + row + "-amount", view.t("prices.line-minimum", line.name())));
        for (String name : fields.wrong()) {
            row(name).ifPresent(row -> {
                String key = name.substring(row.prefix().length()).replaceAll("-\\d+-", ".");
                labels.put(name, row.serviceItem().name() + ", " + view.t("prices." + key));
            });
        }
        return labels;
    }

    /** A service's part of the form. */
    public record Row(int number, ServiceItem serviceItem, Fields fields) {
        public String prefix() {
            return PRICE + "-" + number + "-";
        }

        public String steps() {
            return prefix() + "step";
        }

        public String surcharges() {
            return prefix() + "surcharge";
        }

        public List<SurfaceAttribute> attributes() {
            var type = serviceItem.surfaceType();
            return type == null ? List.of() : type.attributes();
        }

        /** The unit of the prices: that of a price that is there already, else the service's. */
        public Unit unit() {
            String code = fields.typed(prefix() + "unit");
            return code.isEmpty() ? serviceItem.unit() : Unit.ofCode(code);
        }

        /** What the prices are for, as it is typed; blank for one, and where it is wrong, which is noted. */
        private String per() {
            String name = prefix() + "per";
            if (fields.typed(name).isBlank()) {
                return "";
            }
            boolean positive = fields.quantity(name, unit()).isPositive();
            if (!positive) {
                fields.wrong(name, "prices.per-above-zero");
            }
            return positive ? fields.typed(name) : "";
        }

        /** The numbers of the rows that have something in them, and an empty one to fill. */
        public List<Integer> rows(String prefix) {
            return Fields.andNext(filled(prefix));
        }

        private List<Integer> filled(String prefix) {
            return fields.rows(prefix).stream()
                    .filter(k -> Stream.of("from", "price", "attribute", "atLeast", "percent", "amount")
                            .anyMatch(part ->
                                    !fields.typed(prefix + "-" + k + "-" + part).isBlank()))
                    .toList();
        }

        public boolean isPriced() {
            return !filled(steps()).isEmpty() || !filled(surcharges()).isEmpty();
        }

        /** Whether something of this service is to be corrected. */
        public boolean isWrong() {
            return fields.wrong().stream().anyMatch(name -> name.startsWith(prefix()));
        }
    }
}
