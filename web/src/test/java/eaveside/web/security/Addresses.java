package eaveside.web.security;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.lang.reflect.Method;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import javax.sql.DataSource;

/** Every address of the application that can be read, from its resource classes, with ids that a database holds. */
public final class Addresses {
    private static final String QUOTE = "(select id from quote order by expected_cost desc nulls last limit 2)"
            + " union (select id from quote where status = 'SENT' order by id limit 1)"
            + " union (select id from quote where status = 'DRAFT' order by id limit 1)";
    private static final String VISIT = "(select id from visit where status = 'COMPLETED' order by id limit 2)"
            + " union all (select id from visit where status = 'BILLED' order by id limit 1)"
            + " union all (select id from visit where status = 'SCHEDULED' order by id limit 1)";

    /** What stands for the braces of an address: by the address itself, else by the name in the braces. */
    private static final Map<String, String> SAMPLES = Map.ofEntries(
            Map.entry("customer", "select id from customer order by name limit 1"),
            Map.entry("from", "select id from customer order by name limit 1"),
            Map.entry("site", "select id from site order by id limit 1"),
            Map.entry("visit", VISIT),
            Map.entry("month", "select to_char(first_day, 'YYYY-MM') from period order by first_day limit 1"),
            Map.entry("/visits/{visit}/sent/{sheet}", "select visit_id, id from sent_sheet order by id limit 1"),
            Map.entry(
                    "/visits/{visit}/sheets/{sheet}",
                    "select s.visit_id, s.document_id from job_sheet s join document r on r.reverses = s.document_id limit 1"),
            Map.entry("/vehicles/{id}", "select id from vehicle limit 1"),
            Map.entry("photo", "select id from photo order by id limit 1"),
            Map.entry("/customers/{customer}/contacts/{id}", "select customer_id, id from contact order by id limit 1"),
            Map.entry("/customers/{customer}/sites/{id}", "select customer_id, id from site order by id limit 1"),
            Map.entry("/sites/{site}/surfaces/{id}", "select site_id, id from surface order by id limit 1"),
            Map.entry("/customers/{id}", "select id from customer order by name limit 1"),
            Map.entry("/api/customers/{id}", "select id from customer order by name limit 1"),
            Map.entry("/documents/{id}", "select distinct on (type) id from document order by type, number"),
            Map.entry("/api/books/documents/{id}", "select distinct on (type) id from document order by type, number"),
            Map.entry("/api/books/accounts/{code}", "select code from account order by code limit 1"),
            Map.entry("/findings/{id}", "select id from finding order by id limit 12"),
            Map.entry("/api/findings/{id}", "select id from finding order by id limit 1"),
            Map.entry("/invoices/{id}/edit", "select id from invoice_draft order by id limit 1"),
            Map.entry("/invoices/{id}/issue", "select id from invoice_draft order by id limit 1"),
            Map.entry(
                    "/invoices/{id}/credit-memo.pdf",
                    "select id from invoice where credit_memo_id is not null limit 1"),
            Map.entry("/invoices/{invoice}/apply", "select id from invoice where open > 0 order by number limit 1"),
            Map.entry(
                    "/invoices/{original}/credit",
                    "select id from invoice where credit_memo_id is null order by number limit 1"),
            Map.entry("/invoices/{id}", "select id from invoice where credit_memo_id is null order by number limit 1"),
            Map.entry("/api/invoices/{id}", "select id from invoice order by number limit 1"),
            Map.entry("/payments/{id}", "select id from payment order by number limit 1"),
            Map.entry("/api/payments/{id}", "select id from payment order by number limit 1"),
            Map.entry("/prices/{id}/edit", "select id from price_book where published_at is null limit 1"),
            Map.entry("/prices/{id}/publish", "select id from price_book where published_at is null limit 1"),
            Map.entry("/prices/{id}", "select id from price_book where published_at is not null limit 1"),
            Map.entry("/api/price-books/{id}", "select id from price_book limit 1"),
            Map.entry("/quotes/{id}/edit", "select id from quote where status = 'DRAFT' limit 1"),
            Map.entry("/quotes/{id}", QUOTE),
            Map.entry("/api/quotes/{id}", QUOTE),
            Map.entry("/settings/finding-types/{id}", "select code from finding_type limit 1"),
            Map.entry("/api/finding-types/{code}", "select code from finding_type limit 1"),
            Map.entry("/api/settings/taxes/{code}/{date}", "select code, valid_from from tax_setting limit 1"),
            Map.entry("/api/settings/rates/{date}", "select valid_from from cost_rates limit 1"),
            Map.entry("/settings/services/{id}", "select id from service_item limit 1"),
            Map.entry("/api/services/{id}", "select id from service_item limit 1"),
            Map.entry("/settings/service-lines/{id}", "select id from service_line limit 1"),
            Map.entry("/api/service-lines/{id}", "select id from service_line limit 1"),
            Map.entry("/settings/users/{id}", "select id from app_user limit 1"),
            Map.entry("/api/users/{id}", "select id from app_user limit 1"),
            Map.entry("/stock/items/{id}/edit", "select id from stock_item limit 1"),
            Map.entry("/stock/items/{id}", "select id from stock_item limit 1"),
            Map.entry("/api/stock/items/{id}", "select id from stock_item limit 1"),
            Map.entry("/stock/mixes/{id}", "select id from mix limit 1"),
            Map.entry("/api/stock/mixes/{id}", "select id from mix limit 1"),
            Map.entry("/stock/locations/{id}", "select id from location limit 1"),
            Map.entry("/api/stock/locations/{id}", "select id from location limit 1"),
            Map.entry("/api/stock/locations/{id}/levels", "select id from location limit 1"),
            Map.entry("/stock/new/{type}", "values ('receipt'), ('transfer'), ('count'), ('write-off')"),
            Map.entry("/api/visits/{visit}", VISIT));

    /** What is asked with these, since without them they show nothing or are no page. */
    private static final Map<String, List<String>> QUERIES = Map.of(
            "/visits", List.of("?show=COMPLETED", ""),
            "/visits/list.csv", List.of("?show=COMPLETED"),
            "/overview", List.of("", "?span=quarter"),
            "/search", List.of("", "?q=a"),
            "/search/hits", List.of("", "?q=a"),
            "/worklist", List.of("", "?type=bill"),
            "/worklist/list.csv", List.of("", "?type=bill"),
            "/api/visits", List.of("?show=COMPLETED", ""),
            "/api/books/trial-balance", List.of("?from=2000-01-01&to=2199-12-31"),
            "/books", List.of("?from=2000-01-01&to=2199-12-31"));

    /** Answered only where it is said what for; the links that lead there are followed besides. */
    private static final Map<String, String> ASKED =
            Map.of("/payments/new", "select '?customer=' || id from customer order by name limit 1");

    /** No business in them: files of the program, what the server answers itself, and the way in and out. */
    private static final Set<String> NO_BUSINESS = Set.of("/assets/{version}/{file}", "/sign-in", "/sheet-worker.js");

    private Addresses() {}

    /** Templates such as {@code /quotes/{id}}, each with the addresses that stand for it; none where nothing is there. */
    public static Map<String, List<String>> all(DataSource database) throws SQLException {
        return under("/", database);
    }

    /** Those that begin so. */
    public static Map<String, List<String>> under(String beginning, DataSource database) throws SQLException {
        Map<String, List<String>> all = new java.util.TreeMap<>();
        for (String template : templates()) {
            if (!template.startsWith(beginning)) {
                continue;
            }
            List<String> addresses = new ArrayList<>();
            for (String address : filled(template, database)) {
                QUERIES.getOrDefault(template, List.of("")).forEach(query -> addresses.add(address + query));
            }
            all.put(template, addresses);
        }
        return all;
    }

    private static Set<String> templates() {
        Set<String> templates = new TreeSet<>();
        for (JavaClass found : new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("eaveside.web")) {
            if (!found.isAnnotatedWith(Path.class)) {
                continue;
            }
            Class<?> resource = found.reflect();
            for (Method method : resource.getMethods()) {
                if (method.isAnnotationPresent(GET.class)) {
                    Path own = method.getAnnotation(Path.class);
                    String path =
                            "/" + resource.getAnnotation(Path.class).value() + "/" + (own == null ? "" : own.value());
                    templates.add(path.replaceAll("\\{(\\w+)\\s*:\\s*(?:[^{}]|\\{[^{}]*\\})*\\}", "{$1}")
                            .replaceAll("/+", "/")
                            .replaceAll("(.)/$", "$1"));
                }
            }
        }
        templates.removeAll(NO_BUSINESS);
        return templates;
    }

    private static List<String> filled(String template, DataSource database) throws SQLException {
        List<String> addresses = new ArrayList<>();
        if (ASKED.containsKey(template)) {
            for (List<String> row : rows(ASKED.get(template), database)) {
                addresses.add(template + row.getFirst());
            }
            return addresses;
        }
        if (!template.contains("{")) {
            return List.of(template);
        }
        for (List<String> row : rows(sample(template), database)) {
            String address = template;
            for (String value : row) {
                address = address.replaceFirst("\\{\\w+\\}", value);
            }
            addresses.add(address);
        }
        return addresses;
    }

    static String sample(String template) {
        for (String t = template;
                t.contains("{");
                t = t.substring(0, Math.max(t.lastIndexOf('/'), t.lastIndexOf('.')))) {
            String sample = SAMPLES.get(t);
            if (sample != null) {
                return sample;
            }
        }
        String name = template.replaceAll(".*\\{(\\w+)\\}.*", "$1");
        String sample = SAMPLES.get(name);
        if (sample == null) {
            throw new IllegalStateException("say in Addresses what stands for the braces of " + template);
        }
        return sample;
    }

    static List<List<String>> rows(String sql, DataSource database) throws SQLException {
        try (var connection = database.getConnection();
                var query = connection.createStatement();
                var result = query.executeQuery(sql)) {
            List<List<String>> rows = new ArrayList<>();
            while (result.next()) {
                List<String> row = new ArrayList<>();
                for (int i = 1; i <= result.getMetaData().getColumnCount(); i++) {
                    row.add(result.getString(i));
                }
                rows.add(row);
            }
            return rows;
        }
    }
}
