package eaveside.access.internal;

import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** The one row that says what the owner has opened to the office. */
@Entity
@Table(name = "office_rights")
public class OfficeRightsRow {
    public static final short ID = 1;

    @Id
    short id;

    @Column(name = "reads_books")
    boolean readsBooks;

    @Column(name = "set_by")
    @Nullable
    UserId setBy;

    @Column(name = "set_at")
    @Nullable
    Instant setAt;

    OfficeRightsRow() {}

    public boolean readsBooks() {
        return readsBooks;
    }

    public void set(boolean booksToo, UserId by, Instant at) {
        this.readsBooks = booksToo;
        this.setBy = by;
        this.setAt = at;
    }
}
