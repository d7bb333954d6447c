package eaveside.customers;

import eaveside.customers.internal.Edits;
import eaveside.customers.internal.ModuleMakerRow;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Enters a maker of solar modules with its limits for washing, or changes the limits. */
@Dependent
public class SaveModuleMaker {
    private final Edits edits;
    private final ReadModuleMakers readModuleMakers;

    @Inject
    public SaveModuleMaker(Edits edits, ReadModuleMakers readModuleMakers) {
        this.edits = edits;
        this.readModuleMakers = readModuleMakers;
    }

    /**
     * Answers what is stored, with its version. Refuses a name that differs from another's only in its capitals, and an
     * edit of a version that somebody else has saved over; the same content again is a retry.
     */
    @Transactional
    public ModuleMaker save(ModuleMaker maker, UserId by) {
        return edits.save(
                ModuleMakerRow.class,
                maker.name().value(),
                maker,
                by,
                stored -> {
                    for (ModuleMaker other : readModuleMakers.all()) {
                        if (stored == null
                                && other.name()
                                        .value()
                                        .equalsIgnoreCase(maker.name().value())) {
                            throw new CustomersRefusal.MakerTaken(other.name());
                        }
                    }
                },
                ModuleMakerRow::new,
                () -> new CustomersRefusal.NoSuchMaker(maker.name()));
    }
}
