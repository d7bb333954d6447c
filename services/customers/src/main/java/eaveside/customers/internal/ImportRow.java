package eaveside.customers.internal;

import eaveside.customers.ImportReport;
import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import org.hibernate.annotations.Immutable;

/** A file of customers that was imported. */
@Entity
@Immutable
@Table(name = "customer_import")
public class ImportRow {
    @Id
    String fingerprint;

    @Column(name = "row_count")
    int rowCount;

    int customers;
    int sites;
    int surfaces;

    @Column(name = "imported_by")
    UserId importedBy;

    @Column(name = "imported_at")
    Instant importedAt;

    ImportRow() {}

    ImportRow(String fingerprint, ImportReport report, UserId by, Instant at) {
        this.fingerprint = fingerprint;
        this.rowCount = report.rows();
        this.customers = report.customers();
        this.sites = report.sites();
        this.surfaces = report.surfaces();
        this.importedBy = by;
        this.importedAt = at;
    }

    public ImportReport toReport() {
        return new ImportReport(rowCount, customers, sites, surfaces, List.of(), importedAt);
    }
}
