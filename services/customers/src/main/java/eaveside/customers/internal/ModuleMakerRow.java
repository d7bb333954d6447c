package eaveside.customers.internal;

import eaveside.customers.MakerName;
import eaveside.customers.ModuleMaker;
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

/** What a maker of solar modules allows when they are washed. */
@Entity
@Table(name = "module_maker")
public class ModuleMakerRow implements EditableRow<ModuleMaker> {
    @Id
    String name;

    @Column(name = "max_hardness_mg_per_litre")
    @Nullable
    BigDecimal maxHardnessMgPerLitre;

    @Column(name = "max_pressure_kpa")
    @Nullable
    BigDecimal maxPressureKpa;

    @Column(name = "max_difference_celsius")
    @Nullable
    BigDecimal maxDifferenceCelsius;

    @Column(name = "alkali_forbidden")
    boolean alkaliForbidden;

    String source;

    @Version
    int version;

    @Embedded
    Signature signature;

    ModuleMakerRow() {}

    public ModuleMakerRow(ModuleMaker maker, Signature signature) {
        this.name = maker.name().value();
        this.version = 1;
        write(maker, signature);
    }

    @Override
    public final void write(ModuleMaker maker, Signature by) {
        this.maxHardnessMgPerLitre = value(maker.maxHardness());
        this.maxPressureKpa = value(maker.maxPressure());
        this.maxDifferenceCelsius = value(maker.maxDifference());
        this.alkaliForbidden = maker.alkaliForbidden();
        this.source = maker.source();
        this.signature = by;
    }

    @Override
    public ModuleMaker content() {
        return new ModuleMaker(
                new MakerName(name),
                quantity(maxHardnessMgPerLitre, Unit.MILLIGRAM_PER_LITRE),
                quantity(maxPressureKpa, Unit.KILOPASCAL),
                quantity(maxDifferenceCelsius, Unit.CELSIUS_DEGREE),
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
