package eaveside.findings;

import eaveside.access.RecordAudit;
import eaveside.findings.internal.FindingQueries;
import eaveside.findings.internal.FindingTypeRow;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;

/** Adds a type of finding to the company's list, changes or retires one. */
@Dependent
public class SaveFindingType {
    private final EntityManager entities;
    private final FindingQueries queries;
    private final RecordAudit audit;

    @Inject
    public SaveFindingType(EntityManager entities, FindingQueries queries, RecordAudit audit) {
        this.entities = entities;
        this.queries = queries;
        this.audit = audit;
    }

    /**
     * Answers what is stored, with its version. Refuses a name that another type bears, and an edit of a version that
     * another user has saved over; the same content again is a retry.
     */
    @Transactional
    public FindingType save(FindingType type, UserId by) {
        queries.takeTurn(FindingQueries.TYPES);
        FindingTypeRow row = entities.find(FindingTypeRow.class, type.code().value());
        if (row == null && type.version() != 0) {
            throw new KernelRefusal.NotFound(type.what(), type.code());
        }
        if (row != null) {
            entities.refresh(row); // it may have been read before the turn came
            FindingType stored = row.toType();
            if (stored.saysTheSameAs(type)) {
                return stored;
            }
            if (stored.version() != type.version()) {
                throw new KernelRefusal.Stale(type.what(), type, stored);
            }
        }
        if (queries.otherTypesNamed(type.name(), type.code().value()) > 0) {
            throw new KernelRefusal.Taken("finding type", "name", type.name());
        }
        if (row == null) {
            row = new FindingTypeRow(type);
            entities.persist(row);
        } else {
            row.change(type);
        }
        audit.done("finding-type.save", by, type.code());
        entities.flush();
        return row.toType();
    }
}
