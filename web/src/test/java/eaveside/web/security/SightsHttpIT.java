package eaveside.web.security;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.OnDemo;
import eaveside.web.testing.Server;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Who sees what work costs: every address of the application, page, file, paper and script's, as each role, looked
 * through for every figure that only the owner may see. The figures are those of the demo company's database, so that
 * one that slips through anywhere is found, whatever it is called there. Leaves the matrix in {@code target}.
 */
@OnDemo
class SightsHttpIT {
    /**
     * An amount of money, which is written with its cents: a change by 2.8% and an example of 14.5 are none, and on some days
     * some visit cost as much.
     */
    private static final Pattern NUMBER =
            Pattern.compile("(?<![\\d.,])(?:\\d{1,3}(?:,\\d{3})+|\\d+)\\.\\d{2,}(?![\\d%])");

    /** A rate is the same on every day, so one that a script reads without its cents is found as well. */
    private static final Pattern RATE = Pattern.compile("(?<![\\d.,])\\d+\\.\\d+(?![\\d%])");

    private static final Pattern WORTH = Pattern.compile("Worth \\$([\\d,]+\\.\\d+)");

    private static final String SPREADSHEET = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    private static final int OF_A_TYPE = 2;

    private static final Server SERVER = Server.demo();
    private static final Map<String, Set<BigDecimal>> SECRETS = new LinkedHashMap<>();
    private static final Map<String, List<String>> ADDRESSES = new TreeMap<>();
    private static HttpClient owner;
    private static HttpClient office;
    private static HttpClient technician;

    @BeforeAll
    static void collect() throws SQLException, IOException {
        owner = SERVER.signedIn("edda", SERVER.passwordOf("edda"));
        office = SERVER.signedIn("linus", SERVER.passwordOf("linus"));
        technician = SERVER.signedIn("bram", SERVER.passwordOf("bram"));
        // Other tests of the run may have issued the demo company's own drafts.
        draftInvoice();
        figures();
        ADDRESSES.putAll(Addresses.all(SERVER.database().asOwner()));
        walk();
        leaveOutWorthOfChanges();
    }

    /** What a change of scope is worth is a price, kept nowhere: where it happens to be the same as a cost it tells nothing. */
    private static void leaveOutWorthOfChanges() throws IOException {
        for (String address : ADDRESSES.values().stream().flatMap(List::stream).toList()) {
            if (address.startsWith("/visits/")) {
                Matcher worth = WORTH.matcher(text(get(owner, address)));
                while (worth.find()) {
                    BigDecimal price = new BigDecimal(worth.group(1).replace(",", "")).stripTrailingZeros();
                    SECRETS.values().forEach(figures -> figures.remove(price));
                }
            }
        }
    }

    private static void figures() throws SQLException {
        String open = "select open from invoice union select gross from invoice union select net from invoice_line"
                + " union select net from quote_line union select net_before from quote_line union select top_up from quote_line"
                + " union select unit_price from quote_line union select amount from quote_line_reason"
                + " union select minimum from quote_line_reason union select total from quote union select abs(amount) from payment"
                + " union select abs(amount) from settlement union select abs(value) from stock_entry"
                + " union select gross from invoice_draft union select gross_price from invoice_draft_line"
                + " union select round(quantity * gross_price, 2) from invoice_draft_line"
                + " union select value_to_bill from visit where value_to_bill is not null"
                + " union select price from quantity_step union select value from lot_stock union select value from lot union select credit from customer_account"
                + " union select abs(e.amount) from money_entry e join account a on a.code = e.account_code"
                + "   where a.role in ('RECEIVABLES', 'CUSTOMER_CREDIT', 'REVENUE', 'TAX_PAYABLE', 'INVENTORY', 'GOODS_NOT_INVOICED')";
        secret("expected cost", "select expected_cost from quote union select expected_cost from quote_line", open);
        secret("expected profit", "select total - expected_cost from quote", open);
        secret(
                "cost of visits",
                "select abs(sum(e.amount)) from money_entry e join account a on a.code = e.account_code"
                        + " where a.role = 'WORK_IN_PROGRESS' and e.amount > 0 group by e.document_id"
                        + " union select abs(e.amount) from money_entry e join account a on a.code = e.account_code"
                        + " where a.role in ('WORK_IN_PROGRESS', 'COST_OF_SERVICES', 'LABOR_APPLIED', 'TRAVEL_APPLIED', 'OVERHEAD_APPLIED')",
                open);
        secret(
                "wages and other expenses",
                "select abs(e.amount) from money_entry e join document d on d.id = e.document_id"
                        + " where d.type in ('EXPENSE', 'PERIOD_CLOSE')"
                        // What the books show of them is balances.
                        + " union select abs(sum(e.amount)) from money_entry e join account a on a.code = e.account_code"
                        + "   where a.type = 'EXPENSE' group by a.code",
                open);
        // As the margin report shows them: of a service line in a month, and of all.
        String month = " from money_entry e join account a on a.code = e.account_code where a.role in (%s)"
                + " group by date_trunc('month', e.posting_date)";
        String costs = month.formatted("'COST_OF_SERVICES'");
        String margins = month.formatted("'REVENUE', 'COST_OF_SERVICES'");
        secret(
                "margins",
                "select abs(sum(e.amount))" + costs + " union select abs(sum(e.amount))" + costs + ", e.service_line_id"
                        + " union select abs(sum(e.amount))" + margins + " union select abs(sum(e.amount))" + margins
                        + ", e.service_line_id",
                open);
        secret(
                "rates",
                "select labor_per_hour from cost_rates union select travel_amount from cost_rates"
                        + " union select overhead_per_hour from cost_rates",
                open);
    }

    private static void draftInvoice() throws SQLException {
        String body = """
            {"id": "%s", "customer": "%s", "serviceDate": "%s", "lines": [
              {"id": "%s", "serviceLine": "%s", "description": "Moss off the steps", "taxCode": "%s",
               "quantity": {"value": "1", "unit": "HUR"},
               "price": {"gross": {"amount": "40.00", "currency": "USD", "per": {"value": "1", "unit": "HUR"}},
                         "discount": "0"}}]}
            """.formatted(
                        UUID.randomUUID(),
                        value("select id from customer where active order by name limit 1"),
                        value("select max(posting_date) from document"),
                        UUID.randomUUID(),
                        value("select id from service_line order by name limit 1"),
                        value("select code from tax_code order by code limit 1"));
        HttpResponse<String> answer = json(office, "POST", "api/invoices", body);
        assertEquals(201, answer.statusCode(), answer.body());
    }

    private static HttpResponse<String> json(HttpClient who, String method, String path, String body) {
        return send(who, method, path, "application/json", body);
    }

    private static HttpResponse<String> send(HttpClient who, String method, String path, String type, String body) {
        return SERVER.send(
                who,
                HttpRequest.newBuilder(SERVER.at(path))
                        .header("Content-Type", type)
                        .header("Accept", type.endsWith("json") ? type : "text/html")
                        .header("Origin", SERVER.base().toString().replaceAll("/$", ""))
                        .method(method, HttpRequest.BodyPublishers.ofString(body))
                        .build());
    }

    private static HttpResponse<String> form(HttpClient who, String path, Map<String, String> fields) {
        String body = fields.entrySet().stream()
                .map(f -> URLEncoder.encode(f.getKey(), StandardCharsets.UTF_8) + "="
                        + URLEncoder.encode(f.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return send(who, "POST", path, "application/x-www-form-urlencoded", body);
    }

    private static String value(String sql) throws SQLException {
        try (var connection = SERVER.database().asOwner().getConnection();
                var query = connection.createStatement();
                var result = query.executeQuery(sql)) {
            result.next();
            return result.getString(1);
        }
    }

    @AfterEach
    void close() throws IOException, InterruptedException {
        letOfficeReadBooks(false);
    }

    @Test
    void the_owner_sees_each_type_of_figure_and_every_address_answers() throws Exception {
        Matrix matrix = matrix(owner, "owner");
        assertEquals(List.of(), matrix.notAnswered(), "addresses that answer neither with a page nor with data");
        for (String secret : SECRETS.keySet()) {
            assertTrue(!matrix.showing(secret).isEmpty(), "nothing shows " + secret + ": the test could not fail");
        }
        for (String address : List.of(
                "/quotes/{id}",
                "/api/quotes/{id}",
                "/visits/{visit}",
                "/overview",
                "/books",
                "/api/books/documents/{id}",
                "/documents/{id}",
                "/margins",
                "/margins/margins.pdf",
                "/margins/margins.xlsx",
                "/settings/rates")) {
            assertTrue(matrix.shownBy(address), address + " shows the owner no secret figure");
        }
        for (String template : ADDRESSES.keySet()) {
            assertTrue(
                    !ADDRESSES.get(template).isEmpty() || NOT_IN_DEMO.contains(template),
                    "the demo company has nothing at " + template);
        }
    }

    private static final Set<String> NOT_IN_DEMO = Set.of("/prices/{id}/edit", "/prices/{id}/publish");

    @Test
    void the_office_sees_no_cost_wage_or_margin_and_no_books() throws Exception {
        Matrix matrix = matrix(office, "office");
        assertEquals(Map.of(), matrix.secrets());
        assertMarginsAreClosed(matrix);
        for (String closed : List.of(
                "/books", "/books/accounts", "/books/journal", "/api/books/accounts", "/api/books/trial-balance")) {
            assertEquals(Set.of(403), matrix.statuses(closed), closed);
        }
        assertEquals(Set.of(200), matrix.statuses("/documents/{id}"));
        assertEquals(Set.of(200), matrix.statuses("/books/entries"));
        assertEquals(
                403,
                get(office, "/books/entries?account=" + account("WORK_IN_PROGRESS"))
                        .statusCode());
        assertEquals(
                403,
                get(office, "/books/entries/list.csv?account=" + account("BANK"))
                        .statusCode());
        assertEquals(
                200,
                get(office, "/books/entries?account=" + account("RECEIVABLES")).statusCode());
        assertEquals(List.of(), matrix.notAnswered());
    }

    @Test
    void the_office_reads_the_books_once_the_owner_opens_them_and_costs_stay_closed() throws Exception {
        letOfficeReadBooks(true);
        Matrix matrix = matrix(office, "office-with-books");
        assertTrue(
                matrix.showing("wages and other expenses").stream()
                        .anyMatch(shown -> shown.startsWith("/books/entries?")),
                matrix.showing("wages and other expenses").toString());
        assertMarginsAreClosed(matrix);
        Set<String> elsewhere = new TreeSet<>(matrix.secrets().keySet());
        elsewhere.removeIf(address -> address.matches("(/api)?/books.*|/documents/.*"));
        assertEquals(Set.of(), elsewhere);
    }

    /** The page, its paper, its spreadsheet, and what scripts read: with whatever they are asked for. */
    private static void assertMarginsAreClosed(Matrix matrix) {
        for (String margins : List.of("/margins", "/margins/margins.pdf", "/margins/margins.xlsx", "/api/margins")) {
            Set<Integer> statuses = ADDRESSES.keySet().stream()
                    .filter(address -> address.equals(margins) || address.startsWith(margins + "?"))
                    .flatMap(address -> matrix.statuses(address).stream())
                    .collect(Collectors.toSet());
            assertEquals(Set.of(403), statuses, margins);
        }
    }

    @Test
    void a_technician_sees_none_of_it() throws Exception {
        Matrix matrix = matrix(technician, "technician");
        assertEquals(Map.of(), matrix.secrets());
        assertMarginsAreClosed(matrix);
        assertTrue(matrix.statuses("/sheets").contains(200));
        assertEquals(Set.of(403), matrix.statuses("/quotes/{id}"));
    }

    /** What is answered to a change is looked through as well: the same request by the owner shows what is closed to others. */
    @Test
    void what_is_answered_to_a_change_shows_the_office_no_cost_either() throws Exception {
        List<HttpResponse<String>> toOwner = changes(owner);
        List<HttpResponse<String>> toOffice = changes(office);
        figures();
        leaveOutWorthOfChanges();
        for (int i = 0; i < toOwner.size(); i++) {
            HttpResponse<String> full = toOwner.get(i);
            HttpResponse<String> answer = toOffice.get(i);
            String what = full.request().method() + " " + full.request().uri().getPath();
            assertEquals(full.statusCode(), answer.statusCode(), what + ": " + answer.body());
            assertTrue(SHOWS_COST.matcher(full.body()).find(), what + " could not fail: " + full.body());
            assertFalse(secretsIn(full.body()).isEmpty(), what + " could not fail: " + full.body());
            assertFalse(SHOWS_COST.matcher(answer.body()).find(), what + ": " + answer.body());
            assertEquals(Set.of(), secretsIn(answer.body()), what);
        }
    }

    private static final Pattern SHOWS_COST =
            Pattern.compile("expectedCost|expectedMargin|Expected cost|Cost by service");

    /** Answers to changes that go through, and to such as are refused over the page that they were made on. */
    private static List<HttpResponse<String>> changes(HttpClient who) throws SQLException {
        List<HttpResponse<String>> answers = new ArrayList<>();
        String quote = UUID.randomUUID().toString();
        String make = newQuote(quote);
        answers.add(answered(201, json(who, "POST", "api/quotes", make)));
        String scope = make.substring(make.indexOf("{\"validUntil\""), make.lastIndexOf('}'));
        String revise = "{\"version\": 1, \"scope\": " + scope.replace("\"note\": \"\"", "\"note\": \"New\"") + "}";
        answers.add(answered(200, json(who, "PUT", "api/quotes/" + quote, revise)));
        answers.add(answered(200, json(who, "POST", "api/quotes/" + quote + "/send", "{\"version\": 2}")));
        // A page that was read at the first version: it comes back with what is in the way.
        answers.add(answered(409, form(who, "quotes/" + quote + "/decline", Map.of("version", "1", "reason", "Late"))));
        answers.add(answered(422, form(who, "quotes/" + quote + "/decline", Map.of("version", "2", "reason", ""))));
        String visit = value("select v.id from visit v join money_entry e on e.visit_id = v.id"
                + " where v.sheet_id is not null order by v.id limit 1");
        for (String deed : List.of("reschedule", "cancel", "close", "sheet/reverse")) {
            answers.add(form(who, "visits/" + visit + "/" + deed, Map.of("version", "1")));
        }
        return answers;
    }

    private static HttpResponse<String> answered(int status, HttpResponse<String> answer) {
        assertEquals(status, answer.statusCode(), answer.body());
        return answer;
    }

    /** The work of a quote of the demo company once more. */
    private static String newQuote(String id) throws SQLException {
        return value("""
            select jsonb_build_object('id', '%s', 'customer', q.customer_id, 'site', q.site_id)::text
            from quote q where q.id = (select quote_id from quote_line where expected_cost is not null order by id limit 1)
            """.formatted(id)).replaceFirst("}$", "")
                + ", \"scope\": {\"validUntil\": \""
                + LocalDate.now(ZoneOffset.UTC).plusYears(1) + "\", \"note\": \"\", \"lines\": "
                + value("""
                    select jsonb_agg(jsonb_build_object('id', gen_random_uuid(), 'serviceItem', service_item_id, 'surface', surface_id,
                      'quantity', jsonb_build_object('value', quantity::text, 'unit', unit)))::text from quote_line
                    where quote_id = (select quote_id from quote_line where expected_cost is not null order by id limit 1)
                    """)
                + "}}";
    }

    /** The prices alone are no secret, and their cost is on nobody's form: no answer to a calculation names it. */
    @Test
    void a_calculation_of_prices_says_nothing_of_cost_to_anybody() throws Exception {
        String quote = newQuote(UUID.randomUUID().toString());
        String lines = quote.substring(quote.indexOf("\"lines\""), quote.length() - 2)
                .replaceAll("\"id\": \"[^\"]*\",? ?", "");
        var page = Jsoup.parse(
                text(
                        get(
                                owner,
                                "/quotes/new?"
                                        + value(
                                                "select 'customer=' || customer_id || '&site=' || site_id from quote order by id limit 1"))));
        Map<String, String> fields = new LinkedHashMap<>();
        page.select("main form[method=post] input[name]").forEach(input -> fields.put(input.attr("name"), input.val()));
        fields.put("do", "recalculate");
        for (HttpClient who : List.of(owner, office)) {
            List<HttpResponse<String>> answers = List.of(
                    answered(200, json(who, "POST", "api/prices/calculation", "{" + lines + "}")),
                    answered(200, form(who, "quotes", fields)),
                    answered(200, form(who, "quotes/recalculate", fields)));
            for (HttpResponse<String> answer : answers) {
                assertTrue(NUMBER.matcher(answer.body()).find(), answer.body());
                assertFalse(SHOWS_COST.matcher(answer.body()).find(), answer.body());
                assertEquals(Set.of(), secretsIn(answer.body()), answer.uri().getPath());
            }
        }
    }

    private static String account(String role) throws SQLException {
        try (var connection = SERVER.database().asOwner().getConnection();
                var query = connection.prepareStatement("select code from account where role = ?")) {
            query.setString(1, role);
            try (var result = query.executeQuery()) {
                result.next();
                return result.getString(1);
            }
        }
    }

    private static void letOfficeReadBooks(boolean reads) throws IOException, InterruptedException {
        HttpResponse<String> answer = owner.send(
                HttpRequest.newBuilder(SERVER.at("api/users/office-rights"))
                        .header("Content-Type", "application/json")
                        .header("Origin", SERVER.base().toString().replaceAll("/$", ""))
                        .PUT(HttpRequest.BodyPublishers.ofString("{\"readsBooks\":" + reads + "}"))
                        .build(),
                BodyHandlers.ofString());
        assertEquals(200, answer.statusCode(), answer.body());
    }

    /** Figures with cents only: a whole number says too little to be told from a count. */
    private static void secret(String name, String sql, String open) throws SQLException {
        Set<BigDecimal> figures = new HashSet<>();
        try (var connection = SERVER.database().asOwner().getConnection();
                var query = connection.createStatement();
                var result =
                        query.executeQuery("select distinct x from (" + sql + ") s(x) where x > 1 and x <> trunc(x)"
                                + " and x not in (select y from (" + open + ") o(y) where y is not null)")) {
            while (result.next()) {
                figures.add(result.getBigDecimal(1).stripTrailingZeros());
            }
        }
        SECRETS.put(name, figures);
    }

    /** What links lead the owner to, beside the addresses of the classes: with the queries that pages ask. */
    private static void walk() throws IOException {
        Set<String> known = ADDRESSES.values().stream().flatMap(List::stream).collect(Collectors.toSet());
        Map<String, Integer> types = new HashMap<>();
        Deque<String> waiting = new ArrayDeque<>(List.of("/worklist"));
        Set<String> seen = new HashSet<>(waiting);
        while (!waiting.isEmpty()) {
            String address = waiting.remove();
            HttpResponse<byte[]> answer = get(owner, address);
            if (!answer.headers().firstValue("content-type").orElse("").startsWith("text/html")) {
                continue;
            }
            for (var link : Jsoup.parse(text(answer), SERVER.base().toString()).select("a[href]")) {
                URI to = URI.create(link.absUrl("href").replaceFirst("#.*", "").replace(" ", "%20"));
                String path = to.getRawPath() + (to.getRawQuery() == null ? "" : "?" + to.getRawQuery());
                String type = type(path);
                if (SERVER.base().getAuthority().equals(to.getAuthority())
                        && seen.add(path)
                        && types.merge(type, 1, Integer::sum) <= OF_A_TYPE) {
                    waiting.add(path);
                    if (!known.contains(path)) {
                        ADDRESSES.computeIfAbsent(type, k -> new ArrayList<>()).add(path);
                    }
                }
            }
        }
    }

    private static String type(String address) {
        return address.replaceAll("[0-9a-f]{8}-[0-9a-f-]{27}", "{id}").replaceAll("=[^&]*", "");
    }

    private static HttpResponse<byte[]> get(HttpClient who, String address) throws IOException {
        try {
            return who.send(
                    HttpRequest.newBuilder(SERVER.base().resolve(address))
                            .header("Accept", "text/html,application/json,*/*")
                            .build(),
                    BodyHandlers.ofByteArray());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static String text(HttpResponse<byte[]> answer) throws IOException {
        String type = answer.headers().firstValue("content-type").orElse("");
        if (type.startsWith("application/pdf")) {
            try (var paper = Loader.loadPDF(answer.body())) {
                return new PDFTextStripper().getText(paper);
            }
        }
        if (type.startsWith(SPREADSHEET)) {
            return cells(answer.body());
        }
        String body = type.startsWith("image/") ? "" : new String(answer.body(), StandardCharsets.UTF_8);
        return type.startsWith("text/html") ? withoutReasons(body) : body;
    }

    /**
     * A page without how its prices come about: of figures of the price book alone, and of many that no table holds, such as
     * what an extra lacks to a minimum, so that on some day one of them is what some visit cost.
     */
    private static String withoutReasons(String page) {
        Document read = Jsoup.parse(page);
        read.select(".explained").remove();
        return read.outerHtml();
    }

    /** Every cell of a spreadsheet, which is packed: its bytes would show no figure to anybody. */
    private static String cells(byte[] file) throws IOException {
        StringBuilder cells = new StringBuilder();
        try (var book = new XSSFWorkbook(new ByteArrayInputStream(file))) {
            book.forEach(sheet -> sheet.forEach(row -> row.forEach(cell -> cells.append(
                            cell.getCellType() == CellType.NUMERIC
                                    ? withCents(cell.getNumericCellValue())
                                    : cell.toString())
                    .append('\n'))));
        }
        return cells.toString();
    }

    private static String withCents(double figure) {
        BigDecimal exact = BigDecimal.valueOf(figure);
        return exact.setScale(Math.max(2, exact.scale())).toPlainString();
    }

    private record Cell(String template, String address, int status, Set<String> secrets) {}

    private record Matrix(List<Cell> cells) {
        /** By template, what of the secrets it shows. */
        Map<String, Set<String>> secrets() {
            Map<String, Set<String>> shown = new TreeMap<>();
            cells.stream()
                    .filter(cell -> !cell.secrets().isEmpty())
                    .forEach(cell -> shown.computeIfAbsent(cell.template(), k -> new TreeSet<>())
                            .addAll(cell.secrets()));
            return shown;
        }

        Set<String> showing(String secret) {
            return cells.stream()
                    .filter(cell -> cell.secrets().stream().anyMatch(s -> s.startsWith(secret)))
                    .map(Cell::template)
                    .collect(Collectors.toCollection(TreeSet::new));
        }

        /** Whether the address shows one, with or without what it can be asked for. */
        boolean shownBy(String template) {
            return secrets().keySet().stream()
                    .anyMatch(shown -> shown.equals(template) || shown.startsWith(template + "?"));
        }

        Set<Integer> statuses(String template) {
            return cells.stream()
                    .filter(cell -> cell.template().equals(template))
                    .map(Cell::status)
                    .collect(Collectors.toSet());
        }

        /** What is led on to elsewhere, closed to the role, or refused for what was asked is an answer too. */
        List<String> notAnswered() {
            return cells.stream()
                    .filter(cell -> !Set.of(200, 303, 400, 403, 409, 422).contains(cell.status()))
                    .map(cell -> cell.status() + " " + cell.address())
                    .toList();
        }
    }

    private static Matrix matrix(HttpClient who, String name) throws IOException {
        List<Cell> cells = new ArrayList<>();
        for (var template : ADDRESSES.entrySet()) {
            for (String address : template.getValue()) {
                HttpResponse<byte[]> answer = get(who, address);
                cells.add(new Cell(template.getKey(), address, answer.statusCode(), secretsIn(text(answer))));
            }
        }
        List<String> lines = cells.stream()
                .map(cell -> cell.status() + " " + cell.address() + " " + cell.secrets())
                .toList();
        Files.write(Files.createDirectories(Path.of("target", "sights")).resolve(name + ".txt"), lines);
        assertTrue(cells.size() > 150, cells.size() + " addresses");
        return new Matrix(cells);
    }

    private static Set<String> secretsIn(String text) {
        Set<String> found = new TreeSet<>();
        SECRETS.forEach((name, figures) -> {
            Matcher numbers = (name.equals("rates") ? RATE : NUMBER).matcher(text);
            while (numbers.find()) {
                BigDecimal number = new BigDecimal(numbers.group().replace(",", "")).stripTrailingZeros();
                if (figures.contains(number)) {
                    found.add(name + " " + number.toPlainString());
                }
            }
        });
        return found;
    }
}
