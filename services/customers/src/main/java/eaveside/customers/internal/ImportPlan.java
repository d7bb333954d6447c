package eaveside.customers.internal;

import eaveside.customers.Customer;
import eaveside.customers.Duplicate;
import eaveside.customers.ImportReport;
import eaveside.customers.ImportReport.BadRow;
import eaveside.customers.ImportReport.DuplicateRow;
import eaveside.customers.ManufacturerName;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.internal.CustomerFile.Line;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Decision;
import eaveside.kernel.Refusal;
import eaveside.kernel.SiteId;
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
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Decides what a file of customers holds, and which of its rows are bad; knows nothing of a database. */
@Decision
public final class ImportPlan {
    private static final List<String> OF_CUSTOMER = allBut(FileColumns.CUSTOMER, FileColumns.CUSTOMERS.titles());
    private static final List<String> OF_SITE = allBut(FileColumns.SITE, FileColumns.SITES.titles());

    private static List<String> allBut(String key, List<String> titles) {
        return titles.stream().filter(title -> !title.equals(key)).toList();
    }

    private final ImportCells cells;
    private final int rows;
    private final Map<String, First<Customer>> customers = new LinkedHashMap<>();
    private final Map<String, First<Site>> sites = new LinkedHashMap<>();
    private final List<Surface> surfaces = new ArrayList<>();
    private final Map<String, Long> surfaceLines = new HashMap<>();
    private final List<BadRow> badRows;
    private final List<DuplicateRow> duplicates = new ArrayList<>();
    private int unchanged;

    /** The row that something is first listed in, and what it says; null where that row is bad. */
    private record First<T>(Line line, @Nullable T content) {}

    private ImportPlan(CustomerFile file, Set<ManufacturerName> manufacturers) {
        this.cells = new ImportCells(manufacturers);
        this.rows = file.lines().size() + file.badRows().size();
        this.badRows = new ArrayList<>(file.badRows());
    }

    /**
     * Reads every row.
     *
     * @param  manufacturers the panel manufacturers that have been entered
     */
    public static ImportPlan of(CustomerFile file, Set<ManufacturerName> manufacturers) {
        ImportPlan plan = new ImportPlan(file, manufacturers);
        file.lines().forEach(plan::add);
        return plan;
    }

    private void add(Line line) {
        int before = customers.size() + sites.size() + surfaces.size() + badRows.size();
        if (!line.has(FileColumns.CUSTOMER)) {
            refuse(line, "names no customer");
            return;
        }
        String customerKey = key(line.text(FileColumns.CUSTOMER));
        Customer customer = of(customers, customerKey, line, "customer", OF_CUSTOMER, () -> cells.customer(line));
        String siteKey = customerKey + "\n" + key(line.text(FileColumns.SITE));
        Site site = null;
        if (line.has(FileColumns.SITE)) {
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
        String name = line.text(FileColumns.title(FileColumns.OfSurface.SURFACE));
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
            List<String> columns,
            Supplier<@Nullable T> reading) {
        First<T> first = known.get(key);
        if (first == null) {
            first = new First<>(line, attempt(line, reading));
            known.put(key, first);
        } else {
            for (String column : columns) {
                if (line.has(column) && !line.text(column).equals(first.line().text(column))) {
                    refuse(
                            line,
                            "has another " + column + " than line "
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

    /** Customers of that name are here already: one who says the same is left out, any other makes the row bad. */
    public void alreadyHere(String name, List<KnownCustomer> known) {
        First<Customer> first = customers.get(key(name));
        Customer customer = first == null ? null : first.content();
        if (first == null || customer == null) {
            return;
        }
        List<Site> itsSites = sites().stream()
                .filter(site -> site.customer().equals(customer.id()))
                .toList();
        Set<SiteId> siteIds = itsSites.stream().map(Site::id).collect(Collectors.toSet());
        List<Surface> itsSurfaces = surfaces.stream()
                .filter(surface -> siteIds.contains(surface.site()))
                .toList();
        if (known.stream().noneMatch(k -> k.saysAll(customer, itsSites, itsSurfaces))) {
            refuse(first.line(), "names the customer '" + name + "', who has been entered already");
            return;
        }
        unchanged++;
        customers.remove(key(name));
        sites.values().removeIf(site -> site.content() != null && itsSites.contains(site.content()));
        surfaces.removeAll(itsSurfaces);
    }

    /** A new customer may be the same as these, who are stored or new in this file themselves. */
    public void duplicates(CustomerId customer, List<Duplicate> others) {
        First<Customer> first = firstOf(customer);
        if (first == null) {
            return;
        }
        for (Duplicate other : others) {
            First<Customer> inFile = firstOf(other.id());
            duplicates.add(new DuplicateRow(
                    first.line().number(),
                    first.line().text(FileColumns.CUSTOMER),
                    other.name(),
                    inFile == null ? other.id() : null,
                    inFile == null ? null : Long.valueOf(inFile.line().number()),
                    other.because()));
        }
    }

    private @Nullable First<Customer> firstOf(CustomerId id) {
        for (First<Customer> first : customers.values()) {
            Customer content = first.content();
            if (content != null && content.id().equals(id)) {
                return first;
            }
        }
        return null;
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
        List<DuplicateRow> duplicatesByLine = new ArrayList<>(duplicates);
        duplicatesByLine.sort(Comparator.comparingLong(DuplicateRow::line));
        return new ImportReport(
                rows, customers().size(), sites().size(), surfaces.size(), byLine, null, unchanged, duplicatesByLine);
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
