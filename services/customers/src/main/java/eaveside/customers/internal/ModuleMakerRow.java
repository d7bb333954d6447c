package eaveside.customers.internal;

import eaveside.customers.MakerName;
import eaveside.customers.ModuleMaker;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import org.jspecify.annotations.Nullable;

/** What a maker of solar modules allows when they are washed. */
@Entity
@Table(name = "module_maker")
public class ModuleMakerRow implements EditableRow<ModuleMaker> {
    @Id
    String name;

    @Column(name = "max_hardness_mg_per_litre")
    @Nullable
    Integer maxHardnessMgPerLitre;

    @Column(name = "max_pressure_kpa")
    @Nullable
    Integer maxPressureKpa;

    @Column(name = "max_difference_celsius")
    @Nullable
    Integer maxDifferenceCelsius;

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
        this.maxHardnessMgPerLitre = maker.maxHardnessMgPerLitre();
        this.maxPressureKpa = maker.maxPressureKpa();
        this.maxDifferenceCelsius = maker.maxDifferenceCelsius();
        this.alkaliForbidden = maker.alkaliForbidden();
        this.source = maker.source();
        this.signature = by;
    }

    @Override
    public ModuleMaker content() {
        return new ModuleMaker(
                new MakerName(name),
                maxHardnessMgPerLitre,
                maxPressureKpa,
                maxDifferenceCelsius,
                alkaliForbidden,
                source,
                version);
    }
}
