package eaveside.pricing;

import eaveside.kernel.Decision;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.internal.UnitAmounts;
import java.math.BigDecimal;
import java.text.MessageFormat;
import java.text.NumberFormat;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.stream.Collectors;
import org.joda.money.CurrencyUnit;

/**
 * Says an explanation in one sentence, from the message bundle {@code eaveside/pricing/explanations}: "48 at $7.50 each
 * (the price from 40), plus 20% ($1.50) for story 2, so $9.00 each, makes $432.00."
 */
@Decision
public final class ExplanationText {
    private final Locale locale;
    private final ResourceBundle words;

    private ExplanationText(Locale locale) {
        this.locale = locale;
        this.words = ResourceBundle.getBundle(
                "eaveside.pricing.explanations",
                locale,
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    }

    /** The sentence in the locale's language; English where there is no translation. */
    public static String of(Explanation explanation, Locale locale) {
        return new ExplanationText(locale).sentence(explanation);
    }

    private String sentence(Explanation explanation) {
        List<PriceReason> reasons = explanation.reasons();
        String unitPart = reasons.stream()
                .filter(r -> !(r instanceof PriceReason.TopUp))
                .map(r -> clause(r, explanation))
                .collect(Collectors.joining(words.getString("between")));
        if (!explanation.unitPrice().equals(explanation.start().price())) {
            unitPart = say("unitPrice", unitPart, price(explanation.unitPrice()));
        }
        String whole = say("makes", unitPart, money(explanation.netBeforeTopUp()));
        String topUps = reasons.stream()
                .filter(PriceReason.TopUp.class::isInstance)
                .map(r -> clause(r, explanation))
                .collect(Collectors.joining(words.getString("between")));
        if (!topUps.isEmpty()) {
            whole = say("topUps", whole, topUps, money(explanation.net()));
        }
        return say("end", whole);
    }

    private String clause(PriceReason reason, Explanation explanation) {
        String quantity = quantity(explanation.quantity());
        return switch (reason) {
            case PriceReason.FromBook book -> fromBook(book, quantity, explanation.quantity());
            case PriceReason.AsQuoted quoted -> say("asQuoted", quantity, price(quoted.price()));
            case PriceReason.Surcharged s -> surcharged(s);
            case PriceReason.SharedVisit s ->
                say(
                        "sharedVisit",
                        number(s.percent().value()),
                        amount(s.takenOff()),
                        number(BigDecimal.valueOf(s.services())));
            case PriceReason.ToLineMinimum up -> say("toLineMinimum", money(up.share()), money(up.minimum()));
            case PriceReason.ToVisitMinimum up -> say("toVisitMinimum", money(up.share()), money(up.minimum()));
        };
    }

    private String fromBook(PriceReason.FromBook book, String said, Quantity quantity) {
        if (book.from().isZero()) {
            return say("fromBook", said, price(book.price()));
        }
        return book.reached().equals(quantity)
                ? say("fromBook.step", said, price(book.price()), quantity(book.from()))
                : say(
                        "fromBook.stepShared",
                        said,
                        price(book.price()),
                        quantity(book.from()),
                        quantity(book.reached()));
    }

    private String surcharged(PriceReason.Surcharged reason) {
        String why = say("attribute." + reason.attribute(), number(BigDecimal.valueOf(reason.value())));
        return reason.percent() == null
                ? say("surcharged.fixed", amount(reason.added()), why)
                : say("surcharged.percent", number(reason.percent().value()), amount(reason.added()), why);
    }

    private String price(UnitPrice price) {
        Quantity base = price.base();
        boolean one = base.value().compareTo(BigDecimal.ONE) == 0;
        boolean counted = base.unit() == Unit.PIECE || base.unit() == Unit.ONE;
        if (one) {
            return counted
                    ? say("price.each", amount(price))
                    : say("price.perOne", amount(price), words.getString("unit." + base.unit()));
        }
        return say("price.perMany", amount(price), quantity(base));
    }

    private String amount(UnitPrice price) {
        return currency(price.currency(), UnitAmounts.SCALE).format(price.amount());
    }

    private String money(Money money) {
        return currency(money.currency(), money.currency().getDecimalPlaces()).format(money.amount());
    }

    private NumberFormat currency(CurrencyUnit unit, int mostDecimals) {
        NumberFormat format = NumberFormat.getCurrencyInstance(locale);
        format.setCurrency(unit.toCurrency());
        format.setMinimumFractionDigits(unit.getDecimalPlaces());
        format.setMaximumFractionDigits(Math.max(unit.getDecimalPlaces(), mostDecimals));
        return format;
    }

    private String quantity(Quantity quantity) {
        String key = "quantity." + quantity.unit();
        return say(words.containsKey(key) ? key : "quantity", number(quantity.value()));
    }

    private String number(BigDecimal value) {
        NumberFormat format = NumberFormat.getNumberInstance(locale);
        format.setMaximumFractionDigits(Quantity.SCALE);
        return format.format(value);
    }

    private String say(String key, Object... figures) {
        return new MessageFormat(words.getString(key), locale).format(figures);
    }
}
