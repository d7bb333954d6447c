package eaveside.web.books;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.io.StringReader;
import java.math.BigDecimal;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Costs and journals, their reversal and the close of a month, by page. */
class BooksHttpIT {
    private final Visitor office = Visitor.office();

    @BeforeAll
    static void openBooks() {
        Visitor.letOfficeReadBooks(true);
    }

    @AfterAll
    static void closeBooks() {
        Visitor.letOfficeReadBooks(false);
    }

    private final Visitor owner = Visitor.owner();

    /** The form of a cost of so much, paid by the bank. */
    private Map<String, String> cost(String summary, String amount) {
        Map<String, String> form = new HashMap<>(office.form("books/journal", "/books/journal"));
        form.put("type", "EXPENSE");
        form.put("summary", summary);
        form.put("line-0-account", "6200");
        form.put("line-0-debit", amount);
        form.put("line-1-account", "1000");
        form.put("line-1-credit", amount);
        return form;
    }

    /** Its number comes after the last one's, and so does its day; whoever entered it must not wonder where it went. */
    @Test
    void a_cost_of_an_earlier_day_than_the_last_says_why_it_counts_later() {
        Map<String, String> last = cost("Rent of the depot", "12.30");
        assertEquals(303, office.post("books/journal", last).statusCode());
        assertFalse(Visitor.text(office.get("documents/" + last.get("id"))).contains("in the order of their numbers"));
        Map<String, String> late = cost("Stamps", "4.10");
        LocalDate today = LocalDate.parse(SiteToQuote.today());
        late.put("date", today.minusDays(1).toString());
        assertEquals(303, office.post("books/journal", late).statusCode());

        String shown = Visitor.text(office.get("documents/" + late.get("id")));

        assertTrue(shown.contains("in the order of their numbers"), shown);
    }

    @Test
    void a_cost_is_posted_once_opened_and_reversed_once() {
        Map<String, String> form = cost("Telephone of the depot", "48.20");
        var posted = office.post("books/journal", form);
        assertEquals(303, posted.statusCode());
        assertEquals(303, office.post("books/journal", form).statusCode(), "the same again is a retry");
        String document = "documents/" + form.get("id");
        assertEquals("1", Visitor.value("select count(*) from document where id = ?::uuid", form.get("id")));
        String shown = Visitor.text(office.get(document));
        assertTrue(shown.contains("Telephone of the depot") && shown.contains("$48.20"), shown);
        assertEquals(
                1,
                Visitor.page(office.get("books/entries?account=6200"))
                        .select("a[href=/" + document + "]")
                        .size());

        Map<String, String> reversal = new HashMap<>(office.form(document, "/" + document + "/reverse"));
        reversal.put("reason", "Entered twice");
        assertEquals(303, office.post(document + "/reverse", reversal).statusCode());
        reversal.put("id", UUID.randomUUID().toString());
        assertEquals(409, office.post(document + "/reverse", reversal).statusCode(), "once only");
    }

    @Test
    void what_does_not_balance_or_is_not_for_journals_is_marked_and_kept() {
        Map<String, String> form = cost("Rent", "900.00");
        form.put("line-1-credit", "90.00");
        var refused = office.post("books/journal", form);
        assertEquals(422, refused.statusCode());
        assertEquals("Rent", Visitor.page(refused).select("#summary").attr("value"));

        Map<String, String> controlled = cost("By hand", "10.00");
        controlled.put("line-0-account", "1200");
        assertEquals(422, office.post("books/journal", controlled).statusCode());
        Map<String, String> later = cost("Next year", "10.00");
        later.put("date", "2190-01-01");
        assertEquals(422, office.post("books/journal", later).statusCode());
        assertEquals("0", Visitor.value("select count(*) from document where id = ?::uuid", later.get("id")));
        assertEquals(403, Visitor.technician().post("books/journal", form).statusCode());
    }

    /** The cells of a table's rows, without signs of money and without what is not in every one of the forms. */
    private static List<List<String>> cells(Document page) {
        List<List<String>> rows = new ArrayList<>();
        for (Element row : page.select("main table").getFirst().select("tbody tr, tfoot tr")) {
            List<String> cells = new ArrayList<>();
            row.select("td.num").forEach(cell -> cells.add(bare(cell.text())));
            rows.add(cells);
        }
        return rows;
    }

    private static String bare(String amount) {
        return amount.replaceAll("[$,]", "");
    }

    @Test
    void the_trial_balance_has_the_same_figures_as_page_paper_file_and_api() throws Exception {
        assertEquals(
                303,
                office.post("books/journal", cost("Rent of the depot", "1234.50"))
                        .statusCode());
        String today = Visitor.page(office.get("books")).select("#to").attr("value");
        String span = "?from=" + today.substring(0, 8) + "01&to=" + today;
        Document page = Visitor.page(office.get("books" + span));
        List<List<String>> shown = cells(page);
        assertTrue(shown.size() > 2, shown.toString());
        List<String> total = shown.getLast();
        for (int side = 0; side < 6; side += 2) {
            assertEquals(total.get(side), total.get(side + 1), "debits and credits of column " + side);
        }
        assertTrue(new BigDecimal(total.get(4)).compareTo(new BigDecimal("1234.50")) >= 0, total.toString());

        List<CSVRecord> file;
        String csv = office.get("books/trial-balance.csv" + span).body().substring(1);
        try (CSVParser parser = CSVParser.parse(csv, CSVFormat.RFC4180)) {
            file = parser.getRecords();
        }
        assertEquals(shown.size() + 1, file.size());
        for (int row = 0; row < shown.size(); row++) {
            List<String> cells = file.get(row + 1).toList().subList(3, 9);
            List<String> asShown = new ArrayList<>(shown.get(row));
            // The page opens a closing balance of nothing too.
            asShown.replaceAll(cell -> cell.equals("0.00") && cells.get(4).isEmpty() ? "" : cell);
            assertEquals(asShown, cells, "row " + row);
        }

        var pdf = Server.shared()
                .signedIn(Server.OWNER, Server.OWNER_PASSWORD)
                .send(
                        HttpRequest.newBuilder(Server.shared().at("books/trial-balance.pdf" + span))
                                .build(),
                        BodyHandlers.ofByteArray());
        assertEquals(200, pdf.statusCode());
        Files.write(Path.of("target", "trial-balance.pdf"), pdf.body());
        try (var paper = Loader.loadPDF(pdf.body())) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setSortByPosition(true);
            String printed = bare(stripper.getText(paper)).replaceAll("\\s+", " ");
            assertTrue(printed.contains("Trial balance"), printed);
            for (CSVRecord row : file.subList(1, file.size())) {
                String figures = String.join(
                        " ",
                        row.toList().subList(3, 9).stream()
                                .filter(c -> !c.isEmpty())
                                .toList());
                assertTrue(
                        printed.contains(bare(row.get(1))) && printed.contains(figures),
                        row.get(1) + " " + figures + " is missing from " + printed);
            }
        }

        try (var reader = jakarta.json.Json.createReader(new StringReader(
                office.getJson("api/books/trial-balance" + span).body()))) {
            var json = reader.readObject();
            assertEquals(
                    total,
                    Stream.of("opening", "change", "closing")
                            .flatMap(column -> Stream.of("debit", "credit")
                                    .map(side -> json.getJsonObject(column)
                                            .getJsonObject(side)
                                            .getString("amount")))
                            .toList());
            assertEquals(shown.size() - 1, json.getJsonArray("accounts").size());
        }
    }

    @Test
    void every_figure_of_the_trial_balance_opens_the_entries_that_it_is_the_sum_of() {
        assertEquals(
                303, office.post("books/journal", cost("Water rates", "77.25")).statusCode());
        int opened = 0;
        for (Element figure : Visitor.page(office.get("books"))
                .select("main table")
                .getFirst()
                .select("td.num a")) {
            String sum = Visitor.page(office.get(figure.attr("href").substring(1)))
                    .select("main .lead")
                    .text();
            boolean credit = figure.parent().elementSiblingIndex() % 2 == 1;
            String expected = figure.text().equals("$0.00")
                    ? "Total $0.00."
                    : (credit ? "Total credit " : "Total debit ") + figure.text();
            assertTrue(sum.contains(expected), figure + " opens " + sum);
            opened++;
        }
        assertTrue(opened >= 4, opened + " figures");
    }

    @Test
    void days_that_cannot_be_are_named_at_their_field() {
        for (String path : List.of("books", "books/trial-balance.csv", "books/trial-balance.pdf")) {
            var backwards = office.get(path + "?from=2026-03-31&to=2026-03-01");
            assertEquals(422, backwards.statusCode(), path);
            assertEquals(
                    1, Visitor.page(backwards).select(".errors a[href=#to]").size(), path);
            var nonsense = office.get(path + "?from=yesterday");
            assertEquals(422, nonsense.statusCode(), path);
            assertEquals(
                    1, Visitor.page(nonsense).select(".errors a[href=#from]").size(), path);
        }
        assertEquals(
                422,
                office.getJson("api/books/trial-balance?from=2026-03-31&to=2026-03-01")
                        .statusCode());
    }

    @Test
    void only_the_owner_closes_and_only_a_month_that_is_over() {
        Map<String, String> form = Map.of(
                "month",
                YearMonth.parse(SiteToQuote.today().substring(0, 7))
                        .plusMonths(1)
                        .toString());
        assertEquals(403, office.post("books/close", form).statusCode());
        var refused = owner.post("books/close", form);
        assertTrue(refused.statusCode() == 422 || refused.statusCode() == 409, refused.statusCode() + "");
        assertEquals(
                "0",
                Visitor.value(
                        "select count(*) from period where closed_at is not null and first_day > ?::date",
                        SiteToQuote.today()));
    }
}
