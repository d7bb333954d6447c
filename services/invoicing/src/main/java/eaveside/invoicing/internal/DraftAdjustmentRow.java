package eaveside.invoicing.internal;

import eaveside.invoicing.Adjustment;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.jspecify.annotations.Nullable;

/** An allowance or charge of a draft. */
@Entity
@Table(name = "invoice_draft_adjustment")
class DraftAdjustmentRow extends AdjustmentColumns {
    DraftAdjustmentRow() {}

    DraftAdjustmentRow(PartKey key, Adjustment adjustment, @Nullable Integer linePosition, @Nullable String taxCode) {
        super(key, adjustment, linePosition, taxCode);
    }
}
