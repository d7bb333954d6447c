package eaveside.customers;

import eaveside.access.Edits;
import eaveside.customers.internal.PanelManufacturerRow;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Enters a manufacturer of solar panels with its limits for washing, or changes the limits. */
@Shared
public class SavePanelManufacturer {
    private final Edits edits;
    private final ReadPanelManufacturers readPanelManufacturers;

    @Inject
    public SavePanelManufacturer(Edits edits, ReadPanelManufacturers readPanelManufacturers) {
        this.edits = edits;
        this.readPanelManufacturers = readPanelManufacturers;
    }

    /**
     * Answers what is stored, with its version. Refuses what {@link Edits} refuses, and a name that differs from another's
     * only in its capitals.
     */
    @Transactional
    public PanelManufacturer save(PanelManufacturer manufacturer, UserId by) {
        String name = manufacturer.name().value();
        return edits.save(PanelManufacturerRow.class, name, manufacturer, by, stored -> {
            for (PanelManufacturer other : readPanelManufacturers.all()) {
                if (stored == null && other.name().value().equalsIgnoreCase(name)) {
                    throw new KernelRefusal.Taken(
                            "panel manufacturer", "name", other.name().value());
                }
            }
        });
    }
}
