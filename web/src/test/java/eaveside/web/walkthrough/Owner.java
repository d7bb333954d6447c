package eaveside.web.walkthrough;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import eaveside.web.testing.Server;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/** The owner, who wants to know what each service line earns and where each figure comes from. */
final class Owner extends Person {
    /** Columns of what grows with credits: revenue, margin (or the result in its wide row) and revenue from findings. */
    private static final Set<Integer> EARNED = Set.of(1, 6, 9);

    private static final String RESULT = "Result by the ledger";

    Owner(BrowserContext context, Server server) {
        super(context, server, "edda");
    }

    /** Opens the margin of the period and answers its rows by service line, as the page shows them. */
    Map<String, List<String>> readsMargin(LocalDate from, LocalDate to) {
        go("margins");
        page.fill("#from", from.toString());
        page.fill("#to", to.toString());
        follow("form[action=\"/margins\"] button");
        look("margins");
        Map<String, List<String>> rows = new LinkedHashMap<>();
        for (Element row : shownTable().select("tr:has(> td)")) {
            rows.put(row.selectFirst("th").text(), row.select("td").eachText());
        }
        assertTrue(rows.size() > 2, rows.toString());
        return rows;
    }

    private Element shownTable() {
        return Jsoup.parse(page.content(), page.url()).selectFirst("main table");
    }

    /** Opens every figure of the page, and holds it against the sum of the entries that it opens. */
    void opensEveryFigure() {
        List<String> differing = new ArrayList<>();
        int opened = 0;
        for (Element figure : shownTable().select("td a[href^=/books/entries]")) {
            Document entries = Jsoup.parse(fetchText(figure.attr("href").substring(1)));
            String sum = entries.selectFirst("main .lead").ownText();
            boolean earned = EARNED.contains(figure.closest("td").elementSiblingIndex());
            boolean below = figure.text().startsWith("−");
            String expected = figure.text().equals("$0.00")
                    ? "Total $0.00."
                    : (earned == below ? "Total debit " : "Total credit ")
                            + figure.text().replace("−", "");
            if (!sum.contains(expected)) {
                differing.add(figure.text() + " opens " + sum + " at " + figure.attr("href"));
            }
            opened++;
        }
        assertTrue(opened > 20, opened + " figures");
        assertEquals(List.of(), differing);
    }

    /** Every amount of the page is on the paper, in the row of its service line. */
    void readsTheSameOnPaper(Map<String, List<String>> rows, String query) {
        String paper = paper("margins/margins.pdf" + query, "margin.pdf");
        rows.forEach((line, figures) -> {
            String amounts = String.join(" ", figures.subList(0, Math.min(6, figures.size() - 1)))
                    .replace("$", "");
            String row = line + " " + amounts;
            assertTrue(paper.replace("$", "").replace("−", "-").contains(row.replace("−", "-")), row + " in " + paper);
        });
    }

    /** Every amount of the page is a number of the spreadsheet, in the row of its service line. */
    void readsTheSameInTheSpreadsheet(Map<String, List<String>> rows, String query) {
        byte[] file = download("margins/margins.xlsx" + query, "margin.xlsx");
        Map<String, Row> sheet = new LinkedHashMap<>();
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(file))) {
            for (Row row : book.getSheetAt(0)) {
                Cell name = row.getCell(0);
                if (name != null && name.getCellType() == CellType.STRING) {
                    sheet.putIfAbsent(name.getStringCellValue(), row);
                }
            }
            List<Integer> amounts = List.of(0, 1, 2, 3, 4, 5, 7, 8);
            rows.forEach((line, figures) -> {
                if (line.equals(RESULT)) {
                    BigDecimal result =
                            BigDecimal.valueOf(sheet.get(line).getCell(6).getNumericCellValue());
                    assertEquals(0, amount(figures.getFirst()).compareTo(result), line);
                    return;
                }
                Row row = sheet.get(line);
                assertNotNull(row, line + " in " + sheet.keySet());
                for (int column : amounts) {
                    assertEquals(
                            0,
                            amount(figures.get(column))
                                    .compareTo(BigDecimal.valueOf(
                                            row.getCell(column + 1).getNumericCellValue())),
                            line + " " + column);
                }
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        assertFalse(sheet.isEmpty());
    }

    static BigDecimal amount(String shown) {
        return new BigDecimal(shown.replace('−', '-').replaceAll("[$,]", "").replaceAll("^\\((.*)\\)$", "-$1"));
    }
}
