package eaveside.findings;

import eaveside.access.Edits;
import eaveside.findings.internal.FindingQueries;
import eaveside.findings.internal.FindingTypeRow;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Adds a type of finding to the company's list, changes or retires one. */
@Shared
public class SaveFindingType {
    private final Edits edits;
    private final FindingQueries queries;

    @Inject
    public SaveFindingType(Edits edits, FindingQueries queries) {
        this.edits = edits;
        this.queries = queries;
    }

    /**
     * Answers what is stored, with its version. Refuses what {@link Edits} refuses, and a name that another type bears.
     */
    @Transactional
    public FindingType save(FindingType type, UserId by) {
        String code = type.code().value();
        return edits.save(FindingTypeRow.class, code, type, by, stored -> {
            queries.takeTurn(FindingQueries.TYPES); // two types that are new at once may bear one name
            if (queries.otherTypesNamed(type.name(), code) > 0) {
                throw new KernelRefusal.Taken("finding type", "name", type.name());
            }
        });
    }
}
