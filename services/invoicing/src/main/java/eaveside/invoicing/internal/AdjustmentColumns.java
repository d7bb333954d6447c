package eaveside.invoicing.internal;

import eaveside.invoicing.Adjustment;
import eaveside.kernel.Money;
import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.MappedSuperclass;
import java.math.BigDecimal;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** What the allowances and charges of drafts and of issued invoices have in common. */
@MappedSuperclass
abstract class AdjustmentColumns {
    @EmbeddedId
    PartKey key;

    @Column(name = "line_position")
    @Nullable
    Integer linePosition;

    @Enumerated(EnumType.STRING)
    Adjustment.Type type;

    BigDecimal amount;
    String reason;

    @Column(name = "tax_code")
    @Nullable
    String taxCode;

    AdjustmentColumns() {}

    /** Of a line where a position is given, else of the whole document under the tax code. */
    AdjustmentColumns(PartKey key, Adjustment adjustment, @Nullable Integer linePosition, @Nullable String taxCode) {
        this.key = key;
        this.linePosition = linePosition;
        this.type = adjustment.type();
        this.amount = adjustment.amount().amount();
        this.reason = adjustment.reason();
        this.taxCode = taxCode;
    }

    boolean isOfLine(int position) {
        return linePosition != null && linePosition == position;
    }

    Adjustment toAdjustment(CurrencyUnit currency) {
        return new Adjustment(type, Money.of(currency, amount.stripTrailingZeros()), reason);
    }
}
