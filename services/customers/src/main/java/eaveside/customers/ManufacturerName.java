package eaveside.customers;

import eaveside.kernel.Texts;

/** The name of a manufacturer of solar panels: what it is known by here. */
public record ManufacturerName(String value) {
    public ManufacturerName {
        value = Texts.required("panelManufacturer", value, 100);
    }

    @Override
    public String toString() {
        return value;
    }
}
