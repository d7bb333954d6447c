package eaveside.customers;

import eaveside.access.RecordAudit;
import eaveside.customers.internal.Edits;
import eaveside.customers.internal.PanelManufacturerRow;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Enters a manufacturer of solar panels with its limits for washing, or changes the limits. */
@Dependent
public class SavePanelManufacturer {
    private final Edits edits;
    private final ReadPanelManufacturers readPanelManufacturers;
    private final RecordAudit audit;

    @Inject
    public SavePanelManufacturer(Edits edits, ReadPanelManufacturers readPanelManufacturers, RecordAudit audit) {
        this.audit = audit;
        this.edits = edits;
        this.readPanelManufacturers = readPanelManufacturers;
    }

    /**
     * Answers what is stored, with its version. Refuses a name that differs from another's only in its capitals, and an
     * edit of a version that somebody else has saved over; the same content again is a retry.
     */
    @Transactional
    public PanelManufacturer save(PanelManufacturer manufacturer, UserId by) {
        audit.again(); // a retry, which nothing is checked of, stands on the audit log since the first
        return edits.save(
                PanelManufacturerRow.class,
                manufacturer.name().value(),
                manufacturer,
                by,
                stored -> {
                    for (PanelManufacturer other : readPanelManufacturers.all()) {
                        if (stored == null
                                && other.name()
                                        .value()
                                        .equalsIgnoreCase(manufacturer.name().value())) {
                            throw new CustomersRefusal.ManufacturerTaken(other.name());
                        }
                    }
                    audit.done("panel-manufacturer.save", by, manufacturer.name());
                },
                PanelManufacturerRow::new,
                () -> new CustomersRefusal.NoSuchManufacturer(manufacturer.name()));
    }
}
