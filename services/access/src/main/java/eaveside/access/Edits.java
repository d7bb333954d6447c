package eaveside.access;

import eaveside.kernel.EditedRow;
import eaveside.kernel.Id;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.KeyedRow;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.kernel.Versioned;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.lang.reflect.Constructor;
import java.time.Clock;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * The one way in which what several people edit is saved, for every module: rivals take turns, also on an id that is new;
 * the same content again is a retry and changes nothing; whoever saves second is refused with both contents
 * ({@link KernelRefusal.Stale}); and every save stands on the audit log in the same transaction.
 */
@Shared
public class Edits {
    private final EntityManager entities;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public Edits(EntityManager entities, RecordAudit audit, Clock clock) {
        this.entities = entities;
        this.audit = audit;
        this.clock = clock;
    }

    /** The row as it is stored now, locked against other edits until the commit; null where there is none. */
    @Transactional(TxType.MANDATORY)
    public <R> @Nullable R locked(Class<R> rows, Id id) {
        return lockedBy(rows, id.value());
    }

    private <R> @Nullable R lockedBy(Class<R> rows, Object key) {
        entities.createNativeQuery(
                        "select cast(pg_advisory_xact_lock(hashtextextended(:key, 0)) as text)", String.class)
                .setParameter("key", key.toString())
                .getSingleResult();
        R row = entities.find(rows, key);
        if (row != null) {
            entities.refresh(row); // it may have been read before the turn came
        }
        return row;
    }

    /**
     * Saves the content, new or edited, and answers what is stored.
     *
     * @param  content with the version that it was read with, 0 where it is new
     * @param  check   sees what is stored (null where nothing is) once it is sure that the content will be written
     */
    @Transactional(TxType.MANDATORY)
    public <T extends Record & Versioned, R extends EditedRow<T>> T save(
            Class<R> rows, Id id, T content, UserId by, Consumer<@Nullable T> check) {
        return saveBy(rows, id.value(), content, by, check);
    }

    /** The same for what is known by a name instead of an id. */
    @Transactional(TxType.MANDATORY)
    public <T extends Record & Versioned, R extends KeyedRow<String, T>> T save(
            Class<R> rows, String name, T content, UserId by, Consumer<@Nullable T> check) {
        return saveBy(rows, name, content, by, check);
    }

    private <K, T extends Record & Versioned, R extends KeyedRow<K, T>> T saveBy(
            Class<R> rows, K key, T content, UserId by, Consumer<@Nullable T> check) {
        R row = lockedBy(rows, key);
        if (row == null && content.version() != 0) {
            throw new KernelRefusal.NotFound(content.what(), key);
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
            row = fresh(rows);
            row.begin(key, content, by, clock.instant());
            entities.persist(row);
        } else {
            row.write(content, by, clock.instant());
        }
        audit.done(content.what().replace(' ', '-') + ".save", by, key);
        entities.flush();
        return row.content();
    }

    /** What is stored under the id; refuses with {@link KernelRefusal.NotFound} where nothing is. */
    @Transactional(TxType.MANDATORY)
    public <T extends Record & Versioned, R extends EditedRow<T>> T read(Class<R> rows, Id id, String what) {
        R row = entities.find(rows, id.value());
        if (row == null) {
            throw new KernelRefusal.NotFound(what, id);
        }
        return row.content();
    }

    private static <R> R fresh(Class<R> rows) {
        try {
            Constructor<R> constructor = rows.getDeclaredConstructor();
            constructor.trySetAccessible();
            return constructor.newInstance();
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("a row has a constructor without parameters: " + rows, e);
        }
    }
}
