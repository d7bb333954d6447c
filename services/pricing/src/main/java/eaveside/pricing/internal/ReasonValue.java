package eaveside.pricing.internal;

import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.PriceReason;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.math.BigDecimal;
import java.util.Objects;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** A row of {@code quote_line_reason}; the table's checks say which columns each type fills. */
@Embeddable
record ReasonValue(
        @Column(name = "position") int position,
        @Column(name = "type") @Enumerated(EnumType.STRING) ReasonType type,
        @Column(name = "amount") BigDecimal amount,
        @Column(name = "step_from") @Nullable BigDecimal stepFrom,
        @Column(name = "reached") @Nullable BigDecimal reached,
        @Column(name = "reached_unit") @Nullable String reachedUnit,

        @Column(name = "attribute") @Enumerated(EnumType.STRING) @Nullable
        SurfaceAttribute attribute,

        @Column(name = "value") @Nullable Integer value,
        @Column(name = "at_least") @Nullable Integer atLeast,
        @Column(name = "percent") @Nullable BigDecimal percent,
        @Column(name = "minimum") @Nullable BigDecimal minimum) {

    static ReasonValue of(int position, PriceReason reason) {
        return switch (reason) {
            case PriceReason.FromBook r ->
                new ReasonValue(
                        position,
                        ReasonType.FROM_BOOK,
                        r.price().amount(),
                        r.from().value(),
                        r.reached().value(),
                        r.reached().unit().code(),
                        null,
                        null,
                        null,
                        null,
                        null);
            case PriceReason.Surcharged r ->
                new ReasonValue(
                        position,
                        ReasonType.SURCHARGED,
                        r.added().amount(),
                        null,
                        null,
                        null,
                        r.attribute(),
                        r.value(),
                        r.atLeast(),
                        r.percent() == null ? null : r.percent().value(),
                        null);
            case PriceReason.SharedVisit r ->
                new ReasonValue(
                        position,
                        ReasonType.SHARED_VISIT,
                        r.takenOff().amount(),
                        null,
                        null,
                        null,
                        null,
                        r.services(),
                        null,
                        r.percent().value(),
                        null);
            case PriceReason.ToLineMinimum r -> topUp(position, ReasonType.TO_LINE_MINIMUM, r);
            case PriceReason.ToVisitMinimum r -> topUp(position, ReasonType.TO_VISIT_MINIMUM, r);
            case PriceReason.AsQuoted quoted ->
                throw new IllegalStateException("a quote is priced from its book, not from another quote");
        };
    }

    private static ReasonValue topUp(int position, ReasonType type, PriceReason.TopUp reason) {
        return new ReasonValue(
                position,
                type,
                reason.share().amount(),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                reason.minimum().amount());
    }

    /**
     * @param  base what the line's unit price is per
     */
    PriceReason toReason(CurrencyUnit currency, Quantity base) {
        return switch (type) {
            case FROM_BOOK ->
                new PriceReason.FromBook(
                        Quantity.of(Objects.requireNonNull(stepFrom), base.unit()),
                        Quantity.of(Objects.requireNonNull(reached), Unit.ofCode(Objects.requireNonNull(reachedUnit))),
                        perBase(currency, base));
            case SURCHARGED ->
                new PriceReason.Surcharged(
                        Objects.requireNonNull(attribute),
                        Objects.requireNonNull(value),
                        Objects.requireNonNull(atLeast),
                        percent == null ? null : Percent.of(percent),
                        perBase(currency, base));
            case SHARED_VISIT ->
                new PriceReason.SharedVisit(
                        Objects.requireNonNull(value),
                        Percent.of(Objects.requireNonNull(percent)),
                        perBase(currency, base));
            case TO_LINE_MINIMUM -> new PriceReason.ToLineMinimum(least(currency), share(currency));
            case TO_VISIT_MINIMUM -> new PriceReason.ToVisitMinimum(least(currency), share(currency));
        };
    }

    private UnitPrice perBase(CurrencyUnit currency, Quantity base) {
        return UnitAmounts.canonical("amount", new UnitPrice(currency, amount, base));
    }

    private Money share(CurrencyUnit currency) {
        return Money.of(currency, amount.stripTrailingZeros());
    }

    private Money least(CurrencyUnit currency) {
        return Money.of(currency, Objects.requireNonNull(minimum).stripTrailingZeros());
    }
}
