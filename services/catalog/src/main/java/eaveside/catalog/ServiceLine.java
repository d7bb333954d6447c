package eaveside.catalog;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.Records;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Versioned;
import jakarta.persistence.Embeddable;

/**
 * A part of the business whose margin the owner reads: arrays, windows, roofs.
 *
 * @param  code    capitals, digits and hyphens, at most 20; unique
 * @param  active  false once nothing new is sold under it
 */
@Embeddable
public record ServiceLine(
        ServiceLineId id,
        String code,
        String name,
        @Default("true") boolean active,
        @Default("0") int version) implements Versioned {
    public ServiceLine {
        Check check = new Check();
        String typed = code;
        code = check.value(() -> Codes.checked("code", typed), "");
        name = check.required("name", name, 100);
        check.done();
    }

    @Override
    public ServiceLine withVersion(int other) {
        return Records.with(this, "version", other);
    }
}
