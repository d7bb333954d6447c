package eaveside.findings;

import eaveside.findings.internal.FindingQueries;
import eaveside.findings.internal.KindRow;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;

/** Adds a kind of finding to the company's list, changes or retires one. */
@Dependent
public class SaveFindingKind {
    private final EntityManager entities;
    private final FindingQueries queries;

    @Inject
    public SaveFindingKind(EntityManager entities, FindingQueries queries) {
        this.entities = entities;
        this.queries = queries;
    }

    /** Refuses a name that another kind bears, and a version that somebody else has overtaken. */
    @Transactional
    public void save(FindingKind kind) {
        KindRow row = entities.find(KindRow.class, kind.code().value(), LockModeType.PESSIMISTIC_WRITE);
        if (row != null && row.says(kind)) {
            return;
        }
        int version = row == null ? 0 : row.version();
        if (version != kind.version()) {
            throw new FindingRefusal.KindChanged(kind.code().value(), kind.version(), version);
        }
        if (queries.otherKindsNamed(kind.name(), kind.code().value()) > 0) {
            throw new FindingRefusal.NameTaken(kind.name());
        }
        if (row == null) {
            entities.persist(new KindRow(kind));
        } else {
            row.change(kind);
        }
    }
}
