package eaveside.kernel;

import jakarta.persistence.Column;
import jakarta.persistence.MappedSuperclass;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;

/**
 * The row of something that several people edit. Its content is a record that is stored component by component, so that
 * a field is named in the record alone; the row adds whose it is, how often it was saved, and who did so last.
 *
 * @param <T> the content, with the components {@code id} and {@code version}
 */
@MappedSuperclass
public abstract class EditedRow<T extends Record & Versioned> {
    @jakarta.persistence.Id
    UUID id;

    @Version
    int version;

    @Column(name = "changed_by")
    UUID changedBy;

    @Column(name = "changed_at")
    Instant changedAt;

    /** The content as mapped; its version may be behind. */
    protected abstract T stored();

    protected abstract void store(T content);

    /** What it says, with its version. */
    public final T content() {
        return Records.with(stored(), "version", version);
    }

    /** Fills in a new row. */
    public final void begin(UUID as, T content, UserId by, Instant at) {
        id = as;
        version = 1;
        write(content, by, at);
    }

    /** Overwrites it; the version goes up at the flush. */
    public final void write(T content, UserId by, Instant at) {
        store(content);
        changedBy = by.value();
        changedAt = at;
    }
}
