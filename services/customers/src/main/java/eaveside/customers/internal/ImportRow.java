package eaveside.customers.internal;

import eaveside.customers.ImportReport;
import eaveside.customers.ImportReport.DuplicateRow;
import eaveside.kernel.UserId;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.ArrayList;
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

    int unchanged;

    @ElementCollection
    @CollectionTable(name = "customer_import_duplicate", joinColumns = @JoinColumn(name = "fingerprint"))
    @OrderColumn(name = "position")
    List<DuplicateRow> duplicateRows = new ArrayList<>();

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
        this.unchanged = report.unchanged();
        this.duplicateRows.addAll(report.duplicateRows());
        this.importedBy = by;
        this.importedAt = at;
    }

    public ImportReport toReport() {
        return new ImportReport(rowCount, customers, sites, surfaces, List.of(), importedAt, unchanged, duplicateRows);
    }
}
