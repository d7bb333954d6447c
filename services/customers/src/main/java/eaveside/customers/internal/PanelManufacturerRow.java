package eaveside.customers.internal;

import eaveside.customers.ManufacturerName;
import eaveside.customers.PanelManufacturer;
import eaveside.kernel.KeyedRow;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** What a manufacturer of solar panels allows when they are washed; each limit is kept in the one unit that its column names. */
@Entity
@Table(name = "panel_manufacturer")
public class PanelManufacturerRow extends KeyedRow<String, PanelManufacturer> {
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

    @Override
    protected void key(String key) {
        name = key;
    }

    @Override
    protected void store(PanelManufacturer content) {
        maxHardnessMgPerLiter = value(content.maxHardness());
        maxPressureKpa = value(content.maxPressure());
        maxTemperatureDifferenceCelsius = value(content.maxTemperatureDifference());
        alkaliForbidden = content.alkaliForbidden();
        source = content.source();
    }

    @Override
    protected PanelManufacturer stored() {
        return new PanelManufacturer(
                new ManufacturerName(name),
                quantity(maxHardnessMgPerLiter, Unit.MILLIGRAM_PER_LITER),
                quantity(maxPressureKpa, Unit.KILOPASCAL),
                quantity(maxTemperatureDifferenceCelsius, Unit.CELSIUS_DEGREE),
                alkaliForbidden,
                source,
                0);
    }

    private static @Nullable BigDecimal value(@Nullable Quantity limit) {
        return limit == null ? null : limit.value();
    }

    private static @Nullable Quantity quantity(@Nullable BigDecimal value, Unit unit) {
        return value == null ? null : Quantity.of(value, unit);
    }
}
