package eaveside.customers;

import eaveside.access.RecordAudit;
import eaveside.customers.internal.CustomerFile;
import eaveside.customers.internal.CustomersQueries;
import eaveside.customers.internal.DuplicateSearch;
import eaveside.customers.internal.ImportPlan;
import eaveside.customers.internal.ImportRow;
import eaveside.customers.internal.ImportWriter;
import eaveside.customers.internal.KnownCustomer;
import eaveside.customers.internal.KnownCustomers;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Imports customers with their sites and surfaces from one CSV file (RFC 4180; UTF-8 with or without a byte order
 * mark; comma or semicolon; columns as {@link ImportColumn} says), all or nothing. A file is known by its content:
 * importing the same one again changes nothing, nor does a row that says what is stored already, such as one of our own
 * export.
 */
@Shared
public class ImportCustomers {
    private static final long TURN = 0x696d706f7274L;

    private final EntityManager entities;
    private final CustomersQueries queries;
    private final ReadPanelManufacturers readPanelManufacturers;
    private final ImportWriter writer;
    private final KnownCustomers known;
    private final DuplicateSearch duplicateSearch;
    private final RecordAudit audit;

    @Inject
    public ImportCustomers(
            EntityManager entities,
            CustomersQueries queries,
            ReadPanelManufacturers readPanelManufacturers,
            ImportWriter writer,
            KnownCustomers known,
            DuplicateSearch duplicateSearch,
            RecordAudit audit) {
        this.entities = entities;
        this.queries = queries;
        this.readPanelManufacturers = readPanelManufacturers;
        this.writer = writer;
        this.known = known;
        this.duplicateSearch = duplicateSearch;
        this.audit = audit;
    }

    /** What the file holds, with every bad row; stores nothing. Refuses a file that is no such table at all. */
    @Transactional
    public ImportReport tryOut(byte[] file) {
        CustomerFile read = CustomerFile.read(file);
        ImportRow before = entities.find(ImportRow.class, read.fingerprint());
        return before != null ? before.toReport() : plan(read).report();
    }

    /**
     * Imports the file and answers what came in; the same file again is answered like the first time, with when that was.
     * Refuses with {@link CustomersRefusal.BadRows} where a single row is
     * bad: malformed, contradicting an earlier row, naming an unknown panel manufacturer, or a customer who is here already
     * and says something else. Refuses with {@link CustomersRefusal.DuplicateRows} where a new customer may be here already
     * under another name.
     */
    @Transactional
    public ImportReport run(byte[] file, UserId by) {
        return run(file, by, false);
    }

    /** @param  allowDuplicates whether new customers who may be here already come in all the same */
    @Transactional
    public ImportReport run(byte[] file, UserId by, boolean allowDuplicates) {
        CustomerFile read = CustomerFile.read(file);
        queries.takeTurn(TURN);
        ImportRow before = entities.find(ImportRow.class, read.fingerprint());
        if (before != null) {
            return before.toReport();
        }
        ImportPlan plan = plan(read);
        ImportReport report = plan.report();
        if (!report.isClean()) {
            throw new CustomersRefusal.BadRows(report);
        }
        if (!report.duplicateRows().isEmpty() && !allowDuplicates) {
            throw new CustomersRefusal.DuplicateRows(report);
        }
        if (report.customers() == 0) {
            return report;
        }
        writer.write(plan, read.fingerprint(), by);
        audit.done("customers.import", by, report.customers() + " customers");
        return report;
    }

    private ImportPlan plan(CustomerFile file) {
        ImportPlan plan = ImportPlan.of(
                file,
                readPanelManufacturers.all().stream()
                        .map(PanelManufacturer::name)
                        .collect(Collectors.toSet()));
        Map<String, List<KnownCustomer>> here = known.named(plan.names());
        here.forEach(plan::alreadyHere);
        duplicateSearch.among(plan.customers()).forEach(plan::duplicates);
        return plan;
    }
}
