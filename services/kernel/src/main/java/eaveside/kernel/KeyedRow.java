package eaveside.kernel;

import jakarta.persistence.Column;
import jakarta.persistence.MappedSuperclass;
import jakarta.persistence.Version;
import java.time.Instant;

/**
 * The row of something that several people edit, under a key of its own: an id ({@link EditedRow}), or a name by which it is
 * known. Its content is a record that is stored component by component, so that a field is named in the record alone; the
 * row adds how often it was saved, and who did so last.
 *
 * @param <K> the key as the database has it
 * @param <T> the content, with the component {@code version}
 */
@MappedSuperclass
public abstract class KeyedRow<K, T extends Record & Versioned> {
    @Version
    int version;

    @Column(name = "changed_by")
    UserId changedBy;

    @Column(name = "changed_at")
    Instant changedAt;

    /** The content as mapped; its version may be behind. */
    protected abstract T stored();

    protected abstract void store(T content);

    /** Takes its key, once. */
    protected abstract void key(K key);

    /** What it says, with its version. */
    public final T content() {
        T stored = stored();
        return stored.version() == version ? stored : Records.with(stored, "version", version);
    }

    /** Fills in a new row. */
    public final void begin(K as, T content, UserId by, Instant at) {
        key(as);
        version = 1;
        write(content, by, at);
    }

    /** Overwrites it; the version goes up at the flush. */
    public final void write(T content, UserId by, Instant at) {
        store(content);
        changedBy = by;
        changedAt = at;
    }
}
