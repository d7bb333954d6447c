package eaveside.findings.internal;

import eaveside.findings.FindingType;
import eaveside.findings.FindingTypeCode;
import eaveside.kernel.KeyedRow;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

/** A type of finding. */
@Entity
@Table(name = "finding_type")
public class FindingTypeRow extends KeyedRow<String, FindingType> {
    @Id
    String code;

    String name;

    String trade;

    String caution;

    boolean active;

    @Override
    protected void key(String key) {
        code = key;
    }

    @Override
    protected void store(FindingType content) {
        name = content.name();
        trade = content.trade();
        caution = content.caution();
        active = content.active();
    }

    @Override
    protected FindingType stored() {
        return new FindingType(new FindingTypeCode(code), name, trade, caution, active, 0);
    }
}
