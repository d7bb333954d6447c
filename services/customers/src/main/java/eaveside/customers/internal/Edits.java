package eaveside.customers.internal;

import eaveside.customers.CustomersRefusal;
import eaveside.customers.Editable;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** How everything here is saved: rivals take turns, a retry changes nothing, and whoever saves second is refused. */
@Dependent
public class Edits {
    private final EntityManager entities;
    private final CustomersQueries queries;
    private final Clock clock;

    @Inject
    public Edits(EntityManager entities, CustomersQueries queries, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.clock = clock;
    }

    /** The row as it is stored now, locked against other edits until the commit; null where there is none. */
    public <R> @Nullable R locked(Class<R> type, Object id) {
        queries.takeTurn(id.hashCode());
        R row = entities.find(type, id);
        if (row != null) {
            entities.refresh(row); // it may have been read before the turn came
        }
        return row;
    }

    /**
     * Saves the content, new or edited, and answers what is stored.
     *
     * @param  key     of the row
     * @param  check   sees what is stored (null where nothing is) once it is sure that the content will be written
     * @param  missing what to say where an edit's row does not exist
     */
    public <T extends Editable, R extends EditableRow<T>> T save(
            Class<R> type,
            Object key,
            T content,
            UserId by,
            Consumer<@Nullable T> check,
            BiFunction<T, Signature, R> newRow,
            Supplier<CustomersRefusal> missing) {
        R row = locked(type, key);
        if (row == null && content.version() != 0) {
            throw missing.get();
        }
        T stored = row == null ? null : row.content();
        if (stored != null && stored.saysTheSameAs(content)) {
            return stored;
        }
        if (stored != null && stored.version() != content.version()) {
            throw new KernelRefusal.Stale(content.what(), content, stored);
        }
        check.accept(stored);
        if (row == null) {
            row = newRow.apply(content, signature(by));
            entities.persist(row);
        } else {
            row.write(content, signature(by));
        }
        entities.flush();
        return row.content();
    }

    public Signature signature(UserId by) {
        return Signature.of(by, clock.instant());
    }
}
