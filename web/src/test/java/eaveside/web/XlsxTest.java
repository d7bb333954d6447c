package eaveside.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.Money;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;

/** Read back by Apache POI, another implementation of ECMA-376. */
class XlsxTest {
    private static Sheet read(List<String> header, List<List<Object>> rows) throws IOException {
        @SuppressWarnings({"unchecked", "rawtypes"})
        byte[] file = Xlsx.bytes("list", header, (List) rows);
        return new XSSFWorkbook(new ByteArrayInputStream(file)).getSheetAt(0);
    }

    @Test
    void amounts_numbers_and_days_stay_what_they_are() throws IOException {
        Sheet sheet = read(
                List.of("Amount", "Number", "Day"),
                List.of(List.of(
                        Money.of(CurrencyUnit.USD, new BigDecimal("-1234.50")), 139L, LocalDate.of(2028, 2, 29))));
        var row = sheet.getRow(1);
        assertEquals(-1234.5, row.getCell(0).getNumericCellValue());
        assertEquals("#,##0.00", row.getCell(0).getCellStyle().getDataFormatString());
        assertEquals(139, row.getCell(1).getNumericCellValue());
        assertTrue(DateUtil.isCellDateFormatted(row.getCell(2)));
        assertEquals(
                LocalDate.of(2028, 2, 29),
                row.getCell(2).getLocalDateTimeCellValue().toLocalDate());
    }

    @Test
    void a_text_is_a_text_whatever_it_looks_like() throws IOException {
        List<Object> texts =
                Arrays.asList("=2+5", "+1", "@x", "<b>&\"", "a\u0000\u0007b", "Zoë Ångström", "x".repeat(40_000));
        Sheet sheet = read(List.of("a", "b", "c", "d", "e", "f", "g"), List.of(texts));
        for (int i = 0; i < texts.size(); i++) {
            assertEquals(
                    CellType.STRING,
                    sheet.getRow(1).getCell(i).getCellType(),
                    texts.get(i).toString());
        }
        assertEquals("=2+5", sheet.getRow(1).getCell(0).getStringCellValue());
        assertEquals("<b>&\"", sheet.getRow(1).getCell(3).getStringCellValue());
        assertEquals("ab", sheet.getRow(1).getCell(4).getStringCellValue());
        assertEquals(32_767, sheet.getRow(1).getCell(6).getStringCellValue().length());
    }

    @Test
    void what_is_not_known_is_an_empty_cell_and_a_list_of_nothing_has_its_heads() throws IOException {
        assertEquals(
                null,
                read(List.of("a", "b"), List.of(Arrays.asList(null, "x")))
                        .getRow(1)
                        .getCell(0));
        assertEquals("a", read(List.of("a"), List.of()).getRow(0).getCell(0).getStringCellValue());
    }
}
