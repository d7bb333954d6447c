package eaveside.inventory.internal;

import eaveside.inventory.Mix;
import eaveside.inventory.MixRatio;
import eaveside.inventory.RatioMeaning;
import eaveside.kernel.MixId;
import eaveside.kernel.StockItemId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.util.UUID;

/** A mix. */
@Entity
@Table(name = "mix")
public class MixRow {
    @Id
    UUID id;

    String name;

    @Column(name = "concentrate_id")
    UUID concentrateId;

    BigDecimal parts;

    @Enumerated(EnumType.STRING)
    RatioMeaning meaning;

    boolean active;

    @Version
    int version;

    MixRow() {}

    public MixRow(Mix mix) {
        this.id = mix.id().value();
        take(mix);
    }

    public void change(Mix mix) {
        take(mix);
    }

    private void take(Mix mix) {
        this.name = mix.name();
        this.concentrateId = mix.concentrate().value();
        this.parts = mix.ratio().parts();
        this.meaning = mix.ratio().meaning();
        this.active = mix.active();
    }

    /** Whether nothing but the version would change. */
    public boolean says(Mix mix) {
        return name.equals(mix.name())
                && concentrateId.equals(mix.concentrate().value())
                && new MixRatio(parts, meaning).equals(mix.ratio())
                && active == mix.active();
    }

    public int version() {
        return version;
    }

    public Mix toMix() {
        return new Mix(
                new MixId(id), name, new StockItemId(concentrateId), new MixRatio(parts, meaning), active, version);
    }
}
