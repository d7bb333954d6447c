package eaveside.customers.internal;

import eaveside.customers.Customer;
import eaveside.customers.ImportColumn;
import eaveside.customers.ImportReport;
import eaveside.customers.ImportReport.BadRow;
import eaveside.customers.MakerName;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.internal.CustomerFile.Line;
import eaveside.kernel.Refusal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Decides what a file of customers holds, and which of its rows are bad; knows nothing of a database. */
public final class ImportPlan {
    private static final List<ImportColumn> OF_CUSTOMER = List.of(
            ImportColumn.KIND,
            ImportColumn.STREET,
            ImportColumn.CITY,
            ImportColumn.REGION,
            ImportColumn.POSTAL_CODE,
            ImportColumn.COUNTRY,
            ImportColumn.EMAIL,
            ImportColumn.PHONE,
            ImportColumn.PAYMENT_TERM_DAYS,
            ImportColumn.NOTE);
    private static final List<ImportColumn> OF_SITE = List.of(
            ImportColumn.SITE_STREET,
            ImportColumn.SITE_CITY,
            ImportColumn.SITE_REGION,
            ImportColumn.SITE_POSTAL_CODE,
            ImportColumn.SITE_COUNTRY,
            ImportColumn.ACCESS_NOTES,
            ImportColumn.HAZARDS,
            ImportColumn.WATER_ON_SITE);

    private final ImportCells cells;
    private final int rows;
    private final Map<String, First<Customer>> customers = new LinkedHashMap<>();
    private final Map<String, First<Site>> sites = new LinkedHashMap<>();
    private final List<Surface> surfaces = new ArrayList<>();
    private final Map<String, Long> surfaceLines = new HashMap<>();
    private final List<BadRow> badRows;

    /** The row that something is first listed in, and what it says; null where that row is bad. */
    private record First<T>(Line line, @Nullable T content) {}

    private ImportPlan(CustomerFile file, Set<MakerName> makers) {
        this.cells = new ImportCells(makers);
        this.rows = file.lines().size() + file.badRows().size();
        this.badRows = new ArrayList<>(file.badRows());
    }

    /**
     * Reads every row.
     *
     * @param makers the module makers that have been entered
     */
    public static ImportPlan of(CustomerFile file, Set<MakerName> makers) {
        ImportPlan plan = new ImportPlan(file, makers);
        file.lines().forEach(plan::add);
        return plan;
    }

    private void add(Line line) {
        int before = customers.size() + sites.size() + surfaces.size() + badRows.size();
        if (!line.has(ImportColumn.CUSTOMER)) {
            refuse(line, "names no customer");
            return;
        }
        String customerKey = key(line.text(ImportColumn.CUSTOMER));
        Customer customer = of(customers, customerKey, line, "customer", OF_CUSTOMER, () -> cells.customer(line));
        String siteKey = customerKey + "\n" + key(line.text(ImportColumn.SITE));
        Site site = null;
        if (line.has(ImportColumn.SITE)) {
            site = of(sites, siteKey, line, "site", OF_SITE, () -> cells.site(line, customer));
        } else if (OF_SITE.stream().anyMatch(line::has) || ImportCells.namesSurface(line)) {
            refuse(line, "has columns of a site or surface, but names no site");
            return;
        }
        if (ImportCells.namesSurface(line)) {
            addSurface(line, siteKey, site);
        } else if (before == customers.size() + sites.size() + surfaces.size() + badRows.size()) {
            refuse(line, "says nothing that an earlier row has not said");
        }
    }

    private void addSurface(Line line, String siteKey, @Nullable Site site) {
        String name = line.text(ImportColumn.SURFACE);
        Long first = surfaceLines.putIfAbsent(siteKey + "\n" + key(name), line.number());
        if (first != null && !name.isEmpty()) {
            refuse(line, "lists the surface '" + name + "' of this site again, after line " + first);
            return;
        }
        Surface surface = attempt(line, () -> cells.surface(line, site));
        if (surface != null && site != null) {
            surfaces.add(surface);
        }
    }

    /** What the row belongs to: read from its first row, and not contradicted by this one. */
    private <T> @Nullable T of(
            Map<String, First<T>> known,
            String key,
            Line line,
            String what,
            List<ImportColumn> columns,
            Supplier<@Nullable T> reading) {
        First<T> first = known.get(key);
        if (first == null) {
            first = new First<>(line, attempt(line, reading));
            known.put(key, first);
        } else {
            for (ImportColumn column : columns) {
                if (line.has(column) && !line.text(column).equals(first.line().text(column))) {
                    refuse(
                            line,
                            "has another " + column.title() + " than line "
                                    + first.line().number() + ", where the " + what + " is first listed");
                }
            }
        }
        return first.content();
    }

    private <T> @Nullable T attempt(Line line, Supplier<@Nullable T> reading) {
        try {
            return reading.get();
        } catch (Refusal refusal) {
            refuse(line, refusal.text());
            return null;
        }
    }

    private void refuse(Line line, String reason) {
        badRows.add(new BadRow(line.number(), reason));
    }

    /** A customer of that name is here already. */
    public void refuseKnown(String name) {
        First<Customer> first = customers.get(key(name));
        if (first != null) {
            refuse(first.line(), "names the customer '" + name + "', who has been entered already");
        }
    }

    /** The customers' names, as the file spells them. */
    public List<String> names() {
        return contents(customers.values()).stream().map(Customer::name).toList();
    }

    public List<Customer> customers() {
        return contents(customers.values());
    }

    public List<Site> sites() {
        return contents(sites.values());
    }

    public List<Surface> surfaces() {
        return List.copyOf(surfaces);
    }

    public ImportReport report() {
        List<BadRow> byLine = new ArrayList<>(badRows);
        byLine.sort(Comparator.comparingLong(BadRow::line));
        return new ImportReport(rows, customers().size(), sites().size(), surfaces.size(), byLine, null);
    }

    private static <T> List<T> contents(Collection<First<T>> firsts) {
        List<T> contents = new ArrayList<>();
        for (First<T> first : firsts) {
            T content = first.content();
            if (content != null) {
                contents.add(content);
            }
        }
        return contents;
    }

    private static String key(String name) {
        return name.toLowerCase(Locale.ROOT);
    }
}
