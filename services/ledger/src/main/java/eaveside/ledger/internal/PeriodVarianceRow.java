package eaveside.ledger.internal;

import eaveside.ledger.ReadVariances.Variance;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import org.hibernate.annotations.Immutable;

/** What was applied and spent of one pair when its month closed: the proofs hold the entries against it ever after. */
@Entity
@Immutable
@Table(name = "period_variance")
class PeriodVarianceRow {
    @EmbeddedId
    Key key;

    BigDecimal actual;

    BigDecimal applied;

    PeriodVarianceRow() {}

    PeriodVarianceRow(YearMonth month, Variance variance) {
        this.key = new Key(month.atDay(1), variance.account().value());
        this.actual = variance.actual().amount();
        this.applied = variance.applied().amount();
    }

    /** A pair in a month. */
    @Embeddable
    record Key(
            @Column(name = "first_day") LocalDate firstDay,
            @Column(name = "account_code") String accountCode) {}
}
