package eaveside.catalog;

import eaveside.access.Edits;
import eaveside.catalog.internal.CatalogQueries;
import eaveside.catalog.internal.ServiceLineRow;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Adds a service line, or changes one. */
@Shared
public class SaveServiceLine {
    private final Edits edits;
    private final CatalogQueries queries;

    @Inject
    public SaveServiceLine(Edits edits, CatalogQueries queries) {
        this.edits = edits;
        this.queries = queries;
    }

    /** Answers what is stored, with its version. Refuses a code that another has, and what {@link Edits} refuses. */
    @Transactional
    public ServiceLine save(ServiceLine line, UserId by) {
        queries.takeTurn(CatalogQueries.CATALOG);
        return edits.save(ServiceLineRow.class, line.id(), line, by, stored -> {
            for (ServiceLineRow other : queries.linesCoded(line.code())) {
                if (!other.content().id().equals(line.id())) {
                    throw new KernelRefusal.Taken("service line", "code", line.code());
                }
            }
        });
    }
}
