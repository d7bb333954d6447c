package eaveside.offerings;

import eaveside.kernel.Versioned;

/** What several people edit in this module. */
public sealed interface Editable extends Versioned permits ServiceLine, Offering {
    @Override
    Editable withVersion(int version);
}
