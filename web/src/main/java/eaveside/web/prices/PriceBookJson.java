package eaveside.web.prices;

import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.LineMinimum;
import eaveside.pricing.PriceList;
import eaveside.pricing.QuantityStep;
import eaveside.pricing.ServiceItemPrice;
import eaveside.pricing.Surcharge;
import eaveside.web.Json;
import eaveside.web.security.WebRefusal;
import java.math.BigDecimal;
import java.util.List;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** Price books as scripts send and get them, net of tax: what was read can be changed and sent back. */
public final class PriceBookJson {
    private PriceBookJson() {}

    /** From a quantity on; zero where it is absent. */
    public record Step(@Nullable BigDecimal from, @Nullable BigDecimal price) {
        static Step of(QuantityStep step) {
            return new Step(step.from().value(), step.price().amount());
        }

        QuantityStep read(CurrencyUnit currency, Quantity base) {
            return new QuantityStep(
                    from == null
                            ? Quantity.zero(base.unit())
                            : Quantity.of(Json.decimal("steps.from", from), base.unit()),
                    new UnitPrice(currency, Json.decimal("steps.price", price), base));
        }
    }

    /**
     * A surcharge; either a share of the price or a fixed amount is present.
     *
     * @param  attribute of the surface, such as STORY
     * @param  atLeast   the least value of the attribute that is charged
     */
    public record Extra(
            @Nullable String attribute,
            @Nullable Integer atLeast,
            @Nullable BigDecimal percent,
            @Nullable BigDecimal amount) {
        static Extra of(Surcharge surcharge) {
            String attribute = surcharge.attribute().name();
            return switch (surcharge.rate()) {
                case Surcharge.OfPrice share ->
                    new Extra(attribute, surcharge.atLeast(), share.percent().value(), null);
                case Surcharge.PerUnit fixed ->
                    new Extra(
                            attribute, surcharge.atLeast(), null, fixed.amount().amount());
            };
        }

        Surcharge read(CurrencyUnit currency, Quantity base) {
            SurfaceAttribute of = Json.choice("surcharges.attribute", SurfaceAttribute.class, attribute);
            int least = Json.required("surcharges.atLeast", atLeast);
            if (least < of.lowest() || least > of.highest()) {
                throw new WebRefusal.Unreadable(
                        "'surcharges.atLeast' of " + of + " lies between " + of.lowest() + " and " + of.highest());
            }
            return new Surcharge(of, least, rate(currency, base));
        }

        private Surcharge.Rate rate(CurrencyUnit currency, Quantity base) {
            if (percent != null && amount == null) {
                return new Surcharge.OfPrice(Percent.of(Json.decimal("surcharges.percent", percent)));
            }
            if (amount != null && percent == null) {
                return new Surcharge.PerUnit(new UnitPrice(currency, Json.decimal("surcharges.amount", amount), base));
            }
            throw new WebRefusal.Unreadable("'surcharges' have either 'percent' or 'amount'");
        }
    }

    /**
     * What a service costs per the base quantity.
     *
     * @param  baseQuantity such as 100 for a price per hundred square feet; 1 where it is absent
     * @param  unit         a code of UN/ECE Recommendation 20
     */
    public record Price(
            @Nullable String serviceItem,
            @Nullable BigDecimal baseQuantity,
            @Nullable String unit,
            @Nullable List<Step> steps,
            @Nullable List<Extra> surcharges) {
        static Price of(ServiceItemPrice price) {
            return new Price(
                    price.serviceItem().toString(),
                    price.base().value(),
                    price.base().unit().code(),
                    price.steps().stream().map(Step::of).toList(),
                    price.surcharges().stream().map(Extra::of).toList());
        }

        ServiceItemPrice read(CurrencyUnit currency) {
            Quantity base = Quantity.of(
                    baseQuantity == null ? BigDecimal.ONE : Json.decimal("prices.baseQuantity", baseQuantity),
                    Unit.ofCode(Json.required("prices.unit", unit)));
            return new ServiceItemPrice(
                    ServiceItemId.of(Json.required("prices.serviceItem", serviceItem)),
                    Json.required("prices.steps", steps).stream()
                            .map(step -> Json.required("prices.steps", step).read(currency, base))
                            .toList(),
                    listed(surcharges).stream()
                            .map(extra ->
                                    Json.required("prices.surcharges", extra).read(currency, base))
                            .toList());
        }
    }

    /** The least of a service line. */
    public record Minimum(
            @Nullable String serviceLine, @Nullable BigDecimal amount) {
        static Minimum of(LineMinimum minimum) {
            return new Minimum(
                    minimum.serviceLine().toString(), minimum.amount().amount());
        }

        LineMinimum read(CurrencyUnit currency) {
            return new LineMinimum(
                    ServiceLineId.of(Json.required("lineMinimums.serviceLine", serviceLine)),
                    Money.of(currency, Json.decimal("lineMinimums.amount", amount)));
        }
    }

    /**
     * A whole book. Its id is in the address and its number and state are the program's: a change need not send them.
     *
     * @param  number                 absent on a draft
     * @param  state                  DRAFT, COMING, IN_FORCE or PAST
     * @param  version                of a draft, that a change names; 0 for a new one
     * @param  from                   the first day that it is in force
     * @param  currency               ISO 4217; the company's where it is absent
     * @param  visitMinimum           zero, or absent, for none
     * @param  sharedReductionPercent off the price where lines share a visit; zero, or absent, for none
     */
    public record Book(
            @Nullable String id,
            @Nullable Long number,
            @Nullable String state,
            @Nullable Integer version,
            @Nullable String name,
            @Nullable String from,
            @Nullable String currency,
            @Nullable BigDecimal visitMinimum,
            @Nullable BigDecimal sharedReductionPercent,
            @Nullable List<Minimum> lineMinimums,
            @Nullable List<Price> prices) {
        static Book of(Shown book) {
            PriceList list = book.list();
            return new Book(
                    book.id().toString(),
                    book.number(),
                    book.state().name(),
                    book.version(),
                    list.name(),
                    list.from().toString(),
                    list.currency().getCode(),
                    list.visitMinimum().amount(),
                    list.sharedReduction().value(),
                    list.lineMinimums().stream().map(Minimum::of).toList(),
                    list.prices().stream().map(Price::of).toList());
        }

        /** @param  otherwise the currency where the book names none */
        PriceList read(CurrencyUnit otherwise) {
            CurrencyUnit in = currency == null ? otherwise : Json.currency("currency", currency);
            return new PriceList(
                    Json.required("name", name),
                    Json.date("from", from),
                    Money.of(in, visitMinimum == null ? BigDecimal.ZERO : Json.decimal("visitMinimum", visitMinimum)),
                    Percent.of(
                            sharedReductionPercent == null
                                    ? BigDecimal.ZERO
                                    : Json.decimal("sharedReductionPercent", sharedReductionPercent)),
                    listed(lineMinimums).stream()
                            .map(minimum ->
                                    Json.required("lineMinimums", minimum).read(in))
                            .toList(),
                    listed(prices).stream()
                            .map(price -> Json.required("prices", price).read(in))
                            .toList());
        }
    }

    private static <T> List<T> listed(@Nullable List<T> list) {
        return list == null ? List.of() : list;
    }
}
