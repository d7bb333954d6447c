package eaveside.findings;

import eaveside.findings.internal.FindingQueries;
import eaveside.findings.internal.FindingTypeRow;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;

/** Adds a type of finding to the company's list, changes or retires one. */
@Dependent
public class SaveFindingType {
    private final EntityManager entities;
    private final FindingQueries queries;

    @Inject
    public SaveFindingType(EntityManager entities, FindingQueries queries) {
        this.entities = entities;
        this.queries = queries;
    }

    /** Refuses a name that another type bears, and a version that somebody else has overtaken. */
    @Transactional
    public void save(FindingType type) {
        FindingTypeRow row = entities.find(FindingTypeRow.class, type.code().value(), LockModeType.PESSIMISTIC_WRITE);
        if (row != null && row.says(type)) {
            return;
        }
        int version = row == null ? 0 : row.version();
        if (version != type.version()) {
            throw new FindingRefusal.TypeChanged(type.code().value(), type.version(), version);
        }
        if (queries.otherTypesNamed(type.name(), type.code().value()) > 0) {
            throw new FindingRefusal.NameTaken(type.name());
        }
        if (row == null) {
            entities.persist(new FindingTypeRow(type));
        } else {
            row.change(type);
        }
    }
}
