package eaveside.customers.internal;

import eaveside.customers.ManufacturerName;
import eaveside.customers.PanelManufacturer;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** What a manufacturer of solar panels allows when they are washed. */
@Entity
@Table(name = "panel_manufacturer")
public class PanelManufacturerRow implements EditableRow<PanelManufacturer> {
    @Id
    String name;

    @Column(name = "max_hardness_mg_per_liter")
    @Nullable
    BigDecimal maxHardnessMgPerLiter;

    @Column(name = "max_pressure_kpa")
    @Nullable
    BigDecimal maxPressureKpa;

    @Column(name = "max_difference_celsius")
    @Nullable
    BigDecimal maxTemperatureDifferenceCelsius;

    @Column(name = "alkali_forbidden")
    boolean alkaliForbidden;

    String source;

    @Version
    int version;

    @Embedded
    Signature signature;

    PanelManufacturerRow() {}

    public PanelManufacturerRow(PanelManufacturer manufacturer, Signature signature) {
        this.name = manufacturer.name().value();
        this.version = 1;
        write(manufacturer, signature);
    }

    @Override
    public final void write(PanelManufacturer manufacturer, Signature by) {
        this.maxHardnessMgPerLiter = value(manufacturer.maxHardness());
        this.maxPressureKpa = value(manufacturer.maxPressure());
        this.maxTemperatureDifferenceCelsius = value(manufacturer.maxTemperatureDifference());
        this.alkaliForbidden = manufacturer.alkaliForbidden();
        this.source = manufacturer.source();
        this.signature = by;
    }

    @Override
    public PanelManufacturer content() {
        return new PanelManufacturer(
                new ManufacturerName(name),
                quantity(maxHardnessMgPerLiter, Unit.MILLIGRAM_PER_LITER),
                quantity(maxPressureKpa, Unit.KILOPASCAL),
                quantity(maxTemperatureDifferenceCelsius, Unit.CELSIUS_DEGREE),
                alkaliForbidden,
                source,
                version);
    }

    private static @Nullable BigDecimal value(@Nullable Quantity limit) {
        return limit == null ? null : limit.value();
    }

    private static @Nullable Quantity quantity(@Nullable BigDecimal value, Unit unit) {
        return value == null ? null : Quantity.of(value, unit);
    }
}
