package eaveside.findings.internal;

import eaveside.findings.FindingKind;
import eaveside.findings.KindCode;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;

/** A kind of finding. */
@Entity
@Table(name = "finding_kind")
public class KindRow {
    @Id
    String code;

    String name;

    String trade;

    String caution;

    boolean active;

    @Version
    int version;

    KindRow() {}

    public KindRow(FindingKind kind) {
        this.code = kind.code().value();
        this.version = 1;
        change(kind);
    }

    public final void change(FindingKind kind) {
        this.name = kind.name();
        this.trade = kind.trade();
        this.caution = kind.caution();
        this.active = kind.active();
    }

    /** Whether the stored kind says the same, whatever its version. */
    public boolean says(FindingKind kind) {
        return name.equals(kind.name())
                && trade.equals(kind.trade())
                && caution.equals(kind.caution())
                && active == kind.active();
    }

    public int version() {
        return version;
    }

    public FindingKind toKind() {
        return new FindingKind(new KindCode(code), name, trade, caution, active, version);
    }
}
