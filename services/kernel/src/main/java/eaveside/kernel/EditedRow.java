package eaveside.kernel;

import jakarta.persistence.MappedSuperclass;
import java.util.UUID;

/**
 * The row of something that several people edit and that has an id.
 *
 * @param <T> the content, with the components {@code id} and {@code version}
 */
@MappedSuperclass
public abstract class EditedRow<T extends Record & Versioned> extends KeyedRow<UUID, T> {
    @jakarta.persistence.Id
    UUID id;

    @Override
    protected final void key(UUID key) {
        id = key;
    }
}
