package eaveside.customers;

import eaveside.kernel.Versioned;

/** What several people edit in this module. */
public sealed interface Editable extends Versioned permits Customer, Contact, Site, Surface, PanelManufacturer {
    @Override
    Editable withVersion(int version);
}
