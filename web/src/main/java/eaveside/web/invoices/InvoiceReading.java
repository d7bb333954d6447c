package eaveside.web.invoices;

import eaveside.catalog.ServiceItem;
import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxCode;
import eaveside.invoicing.Adjustment;
import eaveside.invoicing.DraftContent;
import eaveside.invoicing.DraftLine;
import eaveside.invoicing.InvoiceInput;
import eaveside.invoicing.ItemPrice;
import eaveside.invoicing.TaxRate;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.web.Json;
import eaveside.web.invoices.InvoiceBodies.OnLine;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** Makes the commands of invoicing of what scripts send; what cannot be read is refused as malformed, by its name. */
final class InvoiceReading {
    private final CurrencyUnit currency;
    private final Function<ServiceItemId, ServiceItem> services;

    private InvoiceReading(CurrencyUnit currency, Function<ServiceItemId, ServiceItem> services) {
        this.currency = currency;
        this.services = services;
    }

    /** For what names no services. */
    static InvoiceReading in(CurrencyUnit currency) {
        return in(currency, id -> {
            throw new IllegalStateException("a service is named where none is looked up: " + id);
        });
    }

    /** @param  services of the catalog, by their ids */
    static InvoiceReading in(CurrencyUnit currency, Function<ServiceItemId, ServiceItem> services) {
        return new InvoiceReading(currency, services);
    }

    /** An invoice to compute; needs no company. */
    static InvoiceInput preview(InvoiceBodies.@Nullable Preview body) {
        InvoiceBodies.Preview preview = Json.required("body", body);
        return in(Json.currency("currency", preview.currency())).input(preview);
    }

    private InvoiceInput input(InvoiceBodies.Preview preview) {
        List<InvoiceInput.Line> lines = new ArrayList<>();
        List<InvoiceBodies.PreviewLine> asked = listed(preview.lines());
        for (int i = 0; i < asked.size(); i++) {
            InvoiceBodies.PreviewLine line = Json.required("lines[" + i + "]", asked.get(i));
            String at = "lines[" + i + "].";
            Quantity quantity = quantity(at, line.quantity(), line.unit());
            lines.add(new InvoiceInput.Line(
                    quantity,
                    price(at, line.price(), line.discount(), line.baseQuantity(), quantity.unit()),
                    adjustments(at, line.allowances(), line.charges()),
                    rate(at, line.taxCategory(), line.rate())));
        }
        List<InvoiceInput.DocumentAdjustment> adjustments = new ArrayList<>();
        onDocument(Adjustment.Type.ALLOWANCE, "allowances", preview.allowances(), adjustments);
        onDocument(Adjustment.Type.CHARGE, "charges", preview.charges(), adjustments);
        return new InvoiceInput(
                currency,
                lines,
                adjustments,
                money("prepaid", preview.prepaid()),
                money("rounding", preview.rounding()));
    }

    private void onDocument(
            Adjustment.Type type,
            String name,
            @Nullable List<InvoiceBodies.PreviewOnDocument> asked,
            List<InvoiceInput.DocumentAdjustment> into) {
        for (int i = 0; i < listed(asked).size(); i++) {
            String at = name + "[" + i + "].";
            InvoiceBodies.PreviewOnDocument one =
                    Json.required(at, listed(asked).get(i));
            into.add(new InvoiceInput.DocumentAdjustment(
                    adjustment(type, at, one.amount(), one.reason()), rate(at, one.taxCategory(), one.rate())));
        }
    }

    private static TaxRate rate(String at, @Nullable String category, @Nullable BigDecimal rate) {
        BigDecimal percent = rate == null ? BigDecimal.ZERO : Json.decimal(at + "rate", rate);
        return new TaxRate(Json.choice(at + "taxCategory", TaxCategory.class, category), Percent.of(percent));
    }

    /** What a draft says. */
    DraftContent content(InvoiceBodies.@Nullable Content body) {
        InvoiceBodies.Content content = Json.required("content", body);
        List<DraftLine> lines = new ArrayList<>();
        List<InvoiceBodies.Line> asked = listed(content.lines());
        for (int i = 0; i < asked.size(); i++) {
            lines.add(line("lines[" + i + "].", Json.required("lines[" + i + "]", asked.get(i))));
        }
        List<DraftContent.OnDocument> adjustments = new ArrayList<>();
        draftAdjustments(Adjustment.Type.ALLOWANCE, "allowances", content.allowances(), adjustments);
        draftAdjustments(Adjustment.Type.CHARGE, "charges", content.charges(), adjustments);
        return new DraftContent(
                Json.date("serviceDate", content.serviceDate()),
                content.reference() == null ? "" : content.reference(),
                content.note() == null ? "" : content.note(),
                lines,
                adjustments,
                money("prepaid", content.prepaid()),
                money("rounding", content.rounding()));
    }

    private void draftAdjustments(
            Adjustment.Type type,
            String name,
            @Nullable List<InvoiceBodies.OnDocument> asked,
            List<DraftContent.OnDocument> into) {
        for (int i = 0; i < listed(asked).size(); i++) {
            String at = name + "[" + i + "].";
            InvoiceBodies.OnDocument one = Json.required(at, listed(asked).get(i));
            into.add(new DraftContent.OnDocument(
                    adjustment(type, at, one.amount(), one.reason()),
                    new TaxCode(Json.required(at + "taxCode", one.taxCode()))));
        }
    }

    /** What the line leaves out is the service's that it names. */
    private DraftLine line(String at, InvoiceBodies.Line line) {
        String named = line.service();
        ServiceItem service = named == null ? null : services.apply(ServiceItemId.of(named));
        String serviceLine = line.serviceLine();
        String unit = line.unit();
        String description = line.description();
        String taxCode = line.taxCode();
        Quantity quantity = quantity(
                at,
                line.quantity(),
                unit == null && service != null ? service.unit().code() : unit);
        return new DraftLine(
                line.id() == null ? InvoiceLineId.next() : InvoiceLineId.of(line.id()),
                serviceLine == null && service != null
                        ? service.serviceLine()
                        : ServiceLineId.of(Json.required(at + "serviceLine", serviceLine)),
                description == null && service != null
                        ? service.name()
                        : Json.required(at + "description", description),
                quantity,
                price(at, line.price(), line.discount(), line.baseQuantity(), quantity.unit()),
                adjustments(at, line.allowances(), line.charges()),
                taxCode == null && service != null
                        ? service.taxCode()
                        : new TaxCode(Json.required(at + "taxCode", taxCode)));
    }

    private static Quantity quantity(String at, @Nullable BigDecimal value, @Nullable String unit) {
        return Quantity.of(Json.decimal(at + "quantity", value), unit == null ? Unit.ONE : Unit.ofCode(unit));
    }

    private ItemPrice price(
            String at,
            @Nullable BigDecimal price,
            @Nullable BigDecimal discount,
            @Nullable BigDecimal base,
            Unit unit) {
        BigDecimal per = base == null ? BigDecimal.ONE : Json.decimal(at + "baseQuantity", base);
        return new ItemPrice(
                new UnitPrice(currency, Json.decimal(at + "price", price), Quantity.of(per, unit)),
                discount == null ? BigDecimal.ZERO : Json.decimal(at + "discount", discount));
    }

    private List<Adjustment> adjustments(String at, @Nullable List<OnLine> allowances, @Nullable List<OnLine> charges) {
        List<Adjustment> adjustments = new ArrayList<>();
        for (OnLine one : listed(allowances)) {
            String name = at + "allowances.";
            OnLine there = Json.required(name, one);
            adjustments.add(adjustment(Adjustment.Type.ALLOWANCE, name, there.amount(), there.reason()));
        }
        for (OnLine one : listed(charges)) {
            String name = at + "charges.";
            OnLine there = Json.required(name, one);
            adjustments.add(adjustment(Adjustment.Type.CHARGE, name, there.amount(), there.reason()));
        }
        return adjustments;
    }

    /** The reason is for the printed invoice: the arithmetic does without. */
    private Adjustment adjustment(
            Adjustment.Type type, String at, @Nullable BigDecimal amount, @Nullable String reason) {
        String said = reason == null ? (type == Adjustment.Type.CHARGE ? "Charge" : "Allowance") : reason;
        return new Adjustment(type, Money.of(currency, Json.decimal(at + "amount", amount)), said);
    }

    /** Nothing where it is absent. */
    Money money(String name, @Nullable BigDecimal amount) {
        return amount == null ? Money.zero(currency) : Money.of(currency, Json.decimal(name, amount));
    }

    /** An amount that must be there. */
    Money amount(String name, @Nullable BigDecimal amount) {
        return Money.of(currency, Json.decimal(name, amount));
    }

    private static <T> List<T> listed(@Nullable List<T> list) {
        return list == null ? List.of() : list;
    }
}
