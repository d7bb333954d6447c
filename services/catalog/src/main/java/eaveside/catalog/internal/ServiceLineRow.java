package eaveside.catalog.internal;

import eaveside.catalog.ServiceLine;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;

/** A service line. */
@Entity
@Table(name = "service_line")
public class ServiceLineRow {
    @Id
    UUID id;

    String code;
    String name;
    boolean active;

    @Version
    int version;

    @Column(name = "changed_by")
    UUID changedBy;

    @Column(name = "changed_at")
    Instant changedAt;

    ServiceLineRow() {}

    public ServiceLineRow(ServiceLine line, UserId by, Instant at) {
        this.id = line.id().value();
        this.version = 1;
        write(line, by, at);
    }

    public final void write(ServiceLine line, UserId by, Instant at) {
        this.code = line.code();
        this.name = line.name();
        this.active = line.active();
        this.changedBy = by.value();
        this.changedAt = at;
    }

    public ServiceLine toServiceLine() {
        return new ServiceLine(new ServiceLineId(id), code, name, active, version);
    }
}
