package eaveside.customers;

import eaveside.kernel.Texts;

/** The name of a maker of solar modules: what it is known by here. */
public record MakerName(String value) {
    public MakerName {
        value = Texts.required("moduleMaker", value, 100);
    }

    @Override
    public String toString() {
        return value;
    }
}
