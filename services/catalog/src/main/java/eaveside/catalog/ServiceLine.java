package eaveside.catalog;

import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Texts;

/**
 * A part of the business whose margin the owner reads: arrays, windows, roofs.
 *
 * @param  code    capitals, digits and hyphens, at most 20; unique
 * @param  active  false once nothing new is sold under it
 * @param  version see {@link Editable}
 */
public record ServiceLine(ServiceLineId id, String code, String name, boolean active, int version) implements Editable {
    public ServiceLine {
        code = Codes.checked("code", code);
        name = Texts.required("name", name, 100);
    }

    @Override
    public ServiceLine withVersion(int version) {
        return new ServiceLine(id, code, name, active, version);
    }
}
