package eaveside.inventory.internal;

import eaveside.inventory.Mix;
import eaveside.kernel.EditedRow;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;

/** A mix. */
@Entity
@Table(name = "mix")
public class MixRow extends EditedRow<Mix> {
    @Embedded
    @AttributeOverride(name = "id", column = @Column(name = "id", insertable = false, updatable = false))
    @AttributeOverride(name = "version", column = @Column(name = "version", insertable = false, updatable = false))
    @AttributeOverride(name = "concentrate", column = @Column(name = "concentrate_id"))
    Mix mix;

    @Override
    protected Mix stored() {
        return mix;
    }

    @Override
    protected void store(Mix content) {
        mix = content;
    }
}
