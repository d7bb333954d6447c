package eaveside.catalog.internal;

import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxCode;
import eaveside.catalog.TaxSetting;
import eaveside.kernel.Percent;
import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import org.hibernate.annotations.Immutable;

/** A tax setting as it was entered; the last entry for a day counts. */
@Entity
@Immutable
@Table(name = "tax_setting")
public class TaxSettingRow {
    @EmbeddedId
    TaxSettingKey key;

    @Enumerated(EnumType.STRING)
    TaxCategory category;

    BigDecimal rate;

    @Column(name = "exemption_reason")
    String exemptionReason;

    @Column(name = "set_by")
    UserId setBy;

    @Column(name = "set_at")
    Instant setAt;

    TaxSettingRow() {}

    public TaxSettingRow(TaxSetting setting, int entry, UserId by, Instant at) {
        this.key = new TaxSettingKey(setting.code().value(), setting.from(), entry);
        this.category = setting.category();
        this.rate = setting.rate().value();
        this.exemptionReason = setting.exemptionReason();
        this.setBy = by;
        this.setAt = at;
    }

    public LocalDate from() {
        return key.from();
    }

    public TaxSetting toTaxSetting() {
        return new TaxSetting(new TaxCode(key.code()), category, Percent.of(rate), key.from(), exemptionReason);
    }
}
