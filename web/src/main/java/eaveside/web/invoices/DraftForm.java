package eaveside.web.invoices;

import eaveside.catalog.TaxCode;
import eaveside.invoicing.Adjustment;
import eaveside.invoicing.DraftContent;
import eaveside.invoicing.DraftLine;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.ItemPrice;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.web.forms.Fields;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/**
 * The form of a draft: lines {@code line-0-…}, each with allowances and charges {@code line-0-adj-0-…}, and those of the
 * whole invoice {@code adj-0-…}. Rows without a word or a figure in
 * them count as not there, as do those ticked {@code line-0-drop}.
 */
final class DraftForm {
    private static final String[] NEEDED = {"description", "quantity", "price"};

    private final Fields fields;
    private final CurrencyUnit currency;
    private final LocalDate today;

    DraftForm(Fields fields, CurrencyUnit currency, LocalDate today) {
        this.fields = fields;
        this.currency = currency;
        this.today = today;
    }

    /** The form filled with what is stored. */
    static Fields showing(InvoiceDraft draft) {
        Map<String, String> values = new LinkedHashMap<>();
        DraftContent content = draft.content();
        values.put("id", draft.id().toString());
        values.put("customer", draft.customer().toString());
        values.put("serviceDate", content.serviceDate().toString());
        values.put("reference", content.reference());
        values.put("note", content.note());
        values.put("prepaid", content.prepaid().isZero() ? "" : plain(content.prepaid()));
        values.put("rounding", content.rounding().isZero() ? "" : plain(content.rounding()));
        for (int i = 0; i < content.lines().size(); i++) {
            DraftLine line = content.lines().get(i);
            String p = "line-" + i + "-";
            UnitPrice price = line.price().gross();
            values.put(p + "id", line.id().toString());
            values.put(p + "line", line.serviceLine().toString());
            values.put(p + "description", line.description());
            values.put(p + "quantity", line.quantity().value().toPlainString());
            values.put(p + "unit", line.quantity().unit().name());
            values.put(p + "price", decimals(price.amount(), price.currency()));
            boolean one = price.base().value().compareTo(BigDecimal.ONE) == 0;
            values.put(p + "base", one ? "" : price.base().value().toPlainString());
            BigDecimal discount = line.price().discount();
            values.put(p + "discount", discount.signum() == 0 ? "" : decimals(discount, price.currency()));
            values.put(p + "tax", line.taxCode().value());
            for (int j = 0; j < line.adjustments().size(); j++) {
                put(values, p + "adj-" + j + "-", line.adjustments().get(j));
            }
        }
        for (int i = 0; i < content.adjustments().size(); i++) {
            DraftContent.OnDocument onDocument = content.adjustments().get(i);
            put(values, "adj-" + i + "-", onDocument.adjustment());
            values.put("adj-" + i + "-tax", onDocument.taxCode().value());
        }
        return Fields.showing(values);
    }

    private static void put(Map<String, String> values, String p, Adjustment adjustment) {
        values.put(p + "type", adjustment.type().name());
        values.put(p + "amount", plain(adjustment.amount()));
        values.put(p + "reason", adjustment.reason());
    }

    private static String plain(Money money) {
        return money.amount().toPlainString();
    }

    /** With the currency's decimals at least. */
    private static String decimals(BigDecimal amount, CurrencyUnit currency) {
        BigDecimal shown = amount.stripTrailingZeros();
        return (shown.scale() < currency.getDecimalPlaces() ? shown.setScale(currency.getDecimalPlaces()) : shown)
                .toPlainString();
    }

    /** What the form says; null where something in it is wrong, which is then noted at its field. */
    @Nullable
    DraftContent content() {
        LocalDate serviceDate = fields.date("serviceDate", today);
        List<DraftLine> lines = new ArrayList<>();
        for (int row : fields.rows("line")) {
            String p = "line-" + row + "-";
            if (!fields.ticked(p + "drop") && !isBlank(p, NEEDED)) {
                DraftLine line = line(p, row + 1);
                if (line != null) {
                    lines.add(line);
                }
            }
        }
        List<DraftContent.OnDocument> adjustments = new ArrayList<>();
        for (int row : fields.rows("adj")) {
            String p = "adj-" + row + "-";
            Adjustment adjustment = isBlank(p, "amount", "reason") ? null : adjustment(p);
            TaxCode tax = adjustment == null ? null : fields.made(p + "tax", () -> new TaxCode(fields.text(p + "tax")));
            if (adjustment != null && tax != null) {
                adjustments.add(new DraftContent.OnDocument(adjustment, tax));
            }
        }
        Money prepaid = isBlank("", "prepaid") ? Money.zero(currency) : fields.money("prepaid", currency);
        Money rounding = isBlank("", "rounding") ? Money.zero(currency) : fields.money("rounding", currency);
        if (fields.hasErrors()) {
            return null;
        }
        try {
            return new DraftContent(
                    serviceDate,
                    fields.optional("reference"),
                    fields.optional("note"),
                    lines,
                    adjustments,
                    prepaid,
                    rounding);
        } catch (Refusal refusal) {
            fields.refused(refusal);
            return null;
        }
    }

    private @Nullable DraftLine line(String p, int number) {
        for (String name : NEEDED) {
            if (isBlank(p, name)) {
                fields.wrong(p + name, "invoices.line-needs." + name, number);
            }
        }
        ServiceLineId serviceLine = fields.made(p + "line", () -> ServiceLineId.of(fields.text(p + "line")));
        String description = fields.text(p + "description");
        Unit unit = fields.choice(p + "unit", Unit.class);
        Quantity quantity = fields.quantity(p + "quantity", unit == null ? Unit.PIECE : unit);
        BigDecimal amount = fields.decimal(p + "price");
        BigDecimal base = isBlank(p, "base") ? BigDecimal.ONE : fields.decimal(p + "base");
        BigDecimal discount = isBlank(p, "discount") ? BigDecimal.ZERO : fields.decimal(p + "discount");
        Quantity per = fields.made(p + "base", () -> Quantity.of(base, quantity.unit()));
        UnitPrice gross = per == null ? null : fields.made(p + "base", () -> new UnitPrice(currency, amount, per));
        ItemPrice price = gross == null ? null : fields.made(p + "price", () -> new ItemPrice(gross, discount));
        TaxCode tax = fields.made(p + "tax", () -> new TaxCode(fields.text(p + "tax")));
        List<Adjustment> adjustments = new ArrayList<>();
        for (int row : fields.rows(p + "adj")) {
            String q = p + "adj-" + row + "-";
            Adjustment adjustment = isBlank(q, "amount", "reason") ? null : adjustment(q);
            if (adjustment != null) {
                adjustments.add(adjustment);
            }
        }
        if (serviceLine == null || unit == null || price == null || tax == null) {
            return null;
        }
        return fields.made(
                p + "description",
                () -> new DraftLine(
                        new InvoiceLineId(fields.id(p + "id")),
                        serviceLine,
                        description,
                        quantity,
                        price,
                        adjustments,
                        tax));
    }

    private @Nullable Adjustment adjustment(String p) {
        Adjustment.Type type = fields.choice(p + "type", Adjustment.Type.class);
        Money amount = fields.money(p + "amount", currency);
        String reason = fields.text(p + "reason");
        return type == null || reason.isEmpty()
                ? null
                : fields.made(p + "amount", () -> new Adjustment(type, amount, reason));
    }

    private boolean isBlank(String p, String... names) {
        for (String name : names) {
            if (!fields.typed(p + name).isBlank()) {
                return false;
            }
        }
        return true;
    }
}
