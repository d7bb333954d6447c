package eaveside.invoicing.internal;

import eaveside.invoicing.DraftLine;
import eaveside.invoicing.LineOrigin;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.jspecify.annotations.Nullable;

/** A line of a draft. */
@Entity
@Table(name = "invoice_draft_line")
class DraftLineRow extends LineColumns {
    DraftLineRow() {}

    DraftLineRow(PartKey key, DraftLine line, @Nullable LineOrigin origin) {
        super(key, line, origin);
    }
}
