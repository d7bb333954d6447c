package eaveside.web.prices;

import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.QuantityStep;
import eaveside.pricing.ServiceItemPrice;
import eaveside.pricing.Surcharge;
import eaveside.web.View;
import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;

/** How the parts of a price list read. */
public final class PriceWords {
    private PriceWords() {}

    /** Such as "$7.50 each" or "$38.00 per 100 ft²". */
    public static String price(View view, UnitPrice price) {
        Quantity base = price.base();
        if (base.value().compareTo(BigDecimal.ONE) != 0) {
            return view.price(price);
        }
        return isCounted(base.unit())
                ? view.t("prices.each", view.price(price))
                : view.t("prices.per-one", view.price(price), view.unit(base.unit()));
    }

    /** From which quantity a step counts: "any quantity" where there is one step only. */
    public static String step(View view, ServiceItemPrice price, int index) {
        List<QuantityStep> steps = price.steps();
        if (steps.size() == 1) {
            return view.t("prices.any");
        }
        return index == 0
                ? view.t("prices.below", view.exactly(steps.get(1).from()))
                : view.t("prices.from-quantity", view.exactly(steps.get(index).from()));
    }

    /** Such as "+20% from story 2". */
    public static String surcharge(View view, Surcharge surcharge) {
        return view.t("prices.surcharge-when", rate(view, surcharge), when(view, surcharge));
    }

    /** Such as "+20%" or "+$1.25". */
    public static String rate(View view, Surcharge surcharge) {
        var percent = surcharge.percent();
        return "+" + (percent == null ? view.price(Objects.requireNonNull(surcharge.amount())) : view.percent(percent));
    }

    /** Such as "from story 2 up". */
    public static String when(View view, Surcharge surcharge) {
        return view.t("prices.when." + surcharge.attribute().name(), surcharge.atLeast());
    }

    static boolean isCounted(Unit unit) {
        return unit == Unit.PIECE || unit == Unit.ONE;
    }
}
