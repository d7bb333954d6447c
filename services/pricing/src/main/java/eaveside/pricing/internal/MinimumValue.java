package eaveside.pricing.internal;

import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.pricing.LineMinimum;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.math.BigDecimal;
import org.joda.money.CurrencyUnit;

/** A row of {@code price_book_line_minimum}. */
@Embeddable
record MinimumValue(
        @Column(name = "service_line_id") ServiceLineId serviceLine,
        @Column(name = "amount") BigDecimal amount) {
    static MinimumValue of(LineMinimum minimum) {
        return new MinimumValue(minimum.serviceLine(), minimum.amount().amount());
    }

    LineMinimum toMinimum(CurrencyUnit currency) {
        return new LineMinimum(serviceLine, Money.of(currency, amount.stripTrailingZeros()));
    }
}
