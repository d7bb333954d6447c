package eaveside.invoicing.internal;

import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxCode;
import eaveside.catalog.TaxSetting;
import eaveside.invoicing.Adjustment;
import eaveside.invoicing.Draft;
import eaveside.invoicing.DraftLine;
import eaveside.invoicing.InvoiceArithmetic;
import eaveside.invoicing.InvoiceInput;
import eaveside.invoicing.InvoiceInput.DocumentAdjustment;
import eaveside.invoicing.InvoiceRefusal;
import eaveside.invoicing.InvoiceTotals;
import eaveside.invoicing.LineOrigin;
import eaveside.invoicing.TaxRate;
import eaveside.kernel.Elements;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Money;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.joda.money.CurrencyUnit;

/**
 * What a draft comes to: its content under the owner's tax settings of the service date, no-charge lines taken off again in
 * full by an allowance that shows their value.
 */
public record DraftReckoning(InvoiceInput input, InvoiceTotals totals, Map<TaxCategory, String> exemptionReasons) {
    private static final String NO_CHARGE = "No-charge work";

    public DraftReckoning {
        exemptionReasons = Map.copyOf(exemptionReasons);
    }

    public static DraftReckoning of(
            CurrencyUnit currency,
            Draft content,
            Map<InvoiceLineId, LineOrigin> origins,
            Function<TaxCode, TaxSetting> taxes) {
        Map<TaxCategory, String> reasons = new LinkedHashMap<>();
        Function<TaxCode, TaxRate> rates = code -> {
            TaxSetting setting = taxes.apply(code);
            TaxRate rate = new TaxRate(setting.category(), setting.rate());
            if (!setting.exemptionReason().isEmpty()) {
                reasons.merge(
                        rate.category(),
                        setting.exemptionReason(),
                        (one, other) -> one.contains(other) ? one : one + "; " + other);
            }
            return rate;
        };
        List<InvoiceInput.Line> lines = new ArrayList<>();
        Elements.each("lines", content.lines(), (line, i) -> {
            LineOrigin origin = origins.get(line.id());
            TaxRate rate = rates.apply(line.taxCode());
            lines.add(origin != null && origin.noCharge() ? noCharge(line, rate) : plain(line, rate));
        });
        List<DocumentAdjustment> adjustments = new ArrayList<>();
        Elements.each(
                "adjustments",
                content.adjustments(),
                (a, i) -> adjustments.add(new DocumentAdjustment(a.adjustment(), rates.apply(a.taxCode()))));
        InvoiceInput input = new InvoiceInput(currency, lines, adjustments, content.prepaid(), content.rounding());
        return new DraftReckoning(input, InvoiceArithmetic.total(input), reasons);
    }

    private static InvoiceInput.Line plain(DraftLine line, TaxRate rate) {
        return new InvoiceInput.Line(line.quantity(), line.price(), line.adjustments(), rate);
    }

    private static InvoiceInput.Line noCharge(DraftLine line, TaxRate rate) {
        if (!line.adjustments().isEmpty()) {
            throw new InvoiceRefusal.NoChargeAdjusted(line.description());
        }
        Money value = InvoiceArithmetic.lineNet(plain(line, rate));
        return new InvoiceInput.Line(
                line.quantity(), line.price(), List.of(Adjustment.allowance(value, NO_CHARGE)), rate);
    }

    /** The net amounts with whose revenue they are, for {@link RevenueSplit}. */
    List<RevenueSplit.Part> parts(Draft content, Map<InvoiceLineId, LineOrigin> origins) {
        List<RevenueSplit.Part> parts = new ArrayList<>();
        for (int i = 0; i < content.lines().size(); i++) {
            DraftLine line = content.lines().get(i);
            LineOrigin origin = origins.get(line.id());
            parts.add(new RevenueSplit.Part(
                    new RevenueSplit.Share(line.serviceLine(), origin == null ? null : origin.finding()),
                    input.lines().get(i).tax(),
                    totals.lineNets().get(i)));
        }
        return parts;
    }
}
