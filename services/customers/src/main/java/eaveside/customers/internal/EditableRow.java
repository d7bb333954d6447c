package eaveside.customers.internal;

import eaveside.customers.Editable;

/** A row that several people edit. */
public interface EditableRow<T extends Editable> {
    /** What it says, with its version. */
    T content();

    /** Overwrites it; the version goes up at the flush. */
    void write(T content, Signature signature);
}
