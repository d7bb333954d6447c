package eaveside.findings.internal;

import eaveside.findings.Severity;
import eaveside.findings.SeverityCode;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import org.hibernate.annotations.Immutable;

/** A severity. */
@Entity
@Immutable
@Table(name = "finding_severity")
public class SeverityRow {
    @Id
    String code;

    String name;

    int rank;

    SeverityRow() {}

    public Severity toSeverity() {
        return new Severity(new SeverityCode(code), name, rank);
    }
}
