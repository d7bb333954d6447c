package eaveside.ledger.internal;

import eaveside.kernel.UserId;
import eaveside.ledger.AccountingPeriod;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import org.jspecify.annotations.Nullable;

/** A month of the books; its row is the lock between posting and closing. */
@Entity
@Table(name = "period")
public class PeriodRow {
    @Id
    @Column(name = "first_day")
    LocalDate firstDay;

    @Column(name = "closed_at")
    @Nullable
    Instant closedAt;

    @Column(name = "closed_by")
    @Nullable
    UserId closedBy;

    PeriodRow() {}

    public PeriodRow(LocalDate firstDay) {
        this.firstDay = firstDay;
    }

    boolean isClosed() {
        return closedAt != null;
    }

    void close(UserId by, Instant at) {
        closedBy = by;
        closedAt = at;
    }

    public AccountingPeriod toPeriod() {
        return new AccountingPeriod(YearMonth.from(firstDay), closedAt);
    }
}
