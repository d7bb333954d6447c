package eaveside.catalog;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.Percent;
import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * How what falls under a tax code is taxed from a day on. The owner's setting: taxability of cleaning differs by place
 * and by surface, and is to be confirmed locally.
 *
 * @param  rate            per cent, above zero in category S and zero in every other, at most 100
 * @param  from            first day that it applies on
 * @param  exemptionReason what the invoice says where no tax is charged; empty in categories S and Z
 */
public record TaxSetting(
        TaxCode code,
        TaxCategory category,
        @Default("0") Percent rate,
        LocalDate from,
        @Default String exemptionReason) {
    private static final Percent ALL = new Percent(BigDecimal.valueOf(100));

    public TaxSetting {
        Check check = new Check();
        exemptionReason = check.optional("exemptionReason", exemptionReason, 200);
        check.that(
                category.hasRate() ? rate.value().signum() > 0 && rate.compareTo(ALL) <= 0 : rate.isZero(),
                () -> new CatalogRefusal.RateDoesNotFit(category));
        check.that(
                category.needsReason() != exemptionReason.isEmpty(),
                () -> new CatalogRefusal.ReasonDoesNotFit(category));
        check.done();
    }
}
