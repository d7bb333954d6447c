package eaveside.catalog;

import eaveside.kernel.Versioned;

/** What several people edit in this module. */
public sealed interface Editable extends Versioned permits ServiceLine, ServiceItem {
    @Override
    Editable withVersion(int version);
}
