package eaveside.findings.internal;

import eaveside.findings.FindingType;
import eaveside.findings.FindingTypeCode;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;

/** A type of finding. */
@Entity
@Table(name = "finding_type")
public class FindingTypeRow {
    @Id
    String code;

    String name;

    String trade;

    String caution;

    boolean active;

    @Version
    int version;

    FindingTypeRow() {}

    public FindingTypeRow(FindingType type) {
        this.code = type.code().value();
        this.version = 1;
        change(type);
    }

    public final void change(FindingType type) {
        this.name = type.name();
        this.trade = type.trade();
        this.caution = type.caution();
        this.active = type.active();
    }

    public FindingType toType() {
        return new FindingType(new FindingTypeCode(code), name, trade, caution, active, version);
    }
}
