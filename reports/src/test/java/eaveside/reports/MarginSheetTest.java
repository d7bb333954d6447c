package eaveside.reports;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.Money;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;

class MarginSheetTest {
    private static Row rowOf(Sheet sheet, String name) {
        for (Row row : sheet) {
            Cell first = row.getCell(0);
            if (first != null
                    && first.getCellType() == CellType.STRING
                    && first.getStringCellValue().equals(name)) {
                return row;
            }
        }
        throw new AssertionError("there is no row " + name);
    }

    /** The figure as the sheet stores it: a number, never a text that looks like one. */
    private static BigDecimal number(Row row, int column) {
        Cell cell = row.getCell(column);
        assertNotNull(cell);
        assertEquals(CellType.NUMERIC, cell.getCellType(), "row " + row.getRowNum() + ", column " + column);
        return BigDecimal.valueOf(cell.getNumericCellValue());
    }

    @Test
    void every_figure_is_a_number_and_equals_the_record() throws IOException {
        MarginPaper paper = Samples.margin();
        List<MarginPaper.Line> all = new ArrayList<>(paper.lines());
        all.add(paper.unassigned());
        all.add(paper.total());
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(new Papers().marginXlsx(paper)))) {
            assertEquals(1, book.getNumberOfSheets());
            Sheet sheet = book.getSheetAt(0);
            assertEquals("Margin by service line", sheet.getSheetName());
            for (MarginPaper.Line line : all) {
                Row row = rowOf(sheet, line.name());
                List<Money> before = List.of(
                        line.revenue(),
                        line.labor(),
                        line.consumables(),
                        line.travel(),
                        line.overhead(),
                        line.margin());
                for (int i = 0; i < before.size(); i++) {
                    assertEquals(0, before.get(i).amount().compareTo(number(row, 1 + i)), line.name() + " " + i);
                }
                BigDecimal percent = line.marginPercent();
                if (percent != null) {
                    assertEquals(0, percent.compareTo(number(row, 7)));
                }
                assertEquals(0, line.noCharge().amount().compareTo(number(row, 8)));
                assertEquals(0, line.fromFindings().amount().compareTo(number(row, 9)));
                assertEquals("#,##0.00", row.getCell(1).getCellStyle().getDataFormatString());
            }
            assertEquals(0, paper.result().amount().compareTo(number(rowOf(sheet, "Result by the ledger"), 6)));
            assertTrue(book.getAllPictures().size() == 1, "the chart");
            assertTrue(sheet.getLastRowNum() < 3 + 1 + all.size() + 1 + 3, "no rows of rules between the figures");
        }
    }

    @Test
    void a_name_that_looks_like_a_formula_stays_text() throws IOException {
        MarginPaper.Line line = Samples.marginLine("=1+1", "10.00", "1.00", "1.00", "1.00", "1.00", "0.00", "0.00");
        MarginPaper.Line total = Samples.marginLine("Total", "10.00", "1.00", "1.00", "1.00", "1.00", "0.00", "0.00");
        MarginPaper sample = Samples.margin();
        MarginPaper paper = new MarginPaper(
                sample.from(), sample.first(), sample.last(), List.of(line), total, null, total.margin(), "");
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(new Papers().marginXlsx(paper)))) {
            assertEquals(
                    CellType.STRING,
                    rowOf(book.getSheetAt(0), "=1+1").getCell(0).getCellType());
        }
    }
}
