package eaveside.customers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.customers.ImportReport.BadRow;
import eaveside.customers.internal.CustomerFile;
import eaveside.customers.internal.ImportPlan;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.Unit;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ImportPlanTest {
    static final String HEADER =
            "customer,country,site,surface,surface_type,extent,unit,rows,panel_manufacturer,story\n";

    static ImportPlan plan(String text) {
        return ImportPlan.of(
                CustomerFile.read(text.getBytes(StandardCharsets.UTF_8)), Set.of(new ManufacturerName("First Light")));
    }

    private static List<BadRow> bad(String rows) {
        return plan(HEADER + rows).report().badRows();
    }

    @Test
    void rows_of_one_customer_and_site_belong_together() {
        ImportPlan plan = plan(HEADER + """
                Mo Fascia,US,Home,South array,array,48,,2,first light,2
                mo fascia,,home,Skylights,Skylight,6,H87,,,
                Mo Fascia,,Barn,Roof,ROOF,1900.5,ftk,,,1

                Lou Gable,US,,,,,,,,
                Ann Soffit,us,Home,,,,,,,
                """);
        assertEquals(List.of(), plan.report().badRows());
        assertEquals(new ImportReport(5, 3, 3, 3, List.of(), null), plan.report());
        Customer mo = plan.customers().getFirst();
        assertEquals("Mo Fascia", mo.name());
        assertEquals(CustomerType.HOUSEHOLD, mo.type());
        assertEquals(30, mo.paymentTermDays());
        assertEquals(mo.id(), plan.sites().get(1).customer());
        Surface array = plan.surfaces().getFirst();
        assertEquals(plan.sites().getFirst().id(), array.site());
        assertEquals(array.site(), plan.surfaces().get(1).site());
        assertEquals(new ManufacturerName("First Light"), array.panelManufacturer());
        assertEquals(2, array.rows());
        assertEquals(Map.of(SurfaceAttribute.STORY, 2), array.attributes());
        assertEquals(
                Quantity.of("1900.5", Unit.SQUARE_FOOT), plan.surfaces().get(2).extent());
    }

    @Test
    void every_column_that_is_described_is_read() {
        String header = String.join(
                ";", ImportColumn.all().stream().map(ImportColumn::title).toList());
        ImportPlan plan =
                plan("\uFEFF" + header.toUpperCase(java.util.Locale.ROOT).replace("SITE_CITY", "Site City") + "\r\n"
                        + "Glass Front;business;1 Pane St;Gutterby;R;00001;US;glass@example.com;555-0140;Text;14;\"says; \"\"hello\"\"\r\ntwice\";yes;"
                        + "Shop;2 Pane St;Eavesham;S;00002;CA;Ring first;Wet floor;yes;"
                        + "Front;window;22;H87;;;1;;;2;3;;1;1;2;1;1;;;\r\n");
        assertEquals(List.of(), plan.report().badRows());
        Customer customer = plan.customers().getFirst();
        assertEquals(
                Records.with(
                        Records.with(
                                Customer.of(
                                                customer.id(),
                                                "Glass Front",
                                                CustomerType.BUSINESS,
                                                new Address("1 Pane St", "Gutterby", "R", "00001", "US"),
                                                14)
                                        .reached("glass@example.com", "555-0140"),
                                "note",
                                "says; \"hello\"\r\ntwice"),
                        "preferredContact",
                        PreferredContact.TEXT),
                customer);
        Site site = plan.sites().getFirst();
        assertEquals(
                new Site(
                        site.id(),
                        customer.id(),
                        "Shop",
                        new Address("2 Pane St", "Eavesham", "S", "00002", "CA"),
                        "Ring first",
                        "Wet floor",
                        true,
                        true,
                        0),
                site);
        assertEquals(
                Map.of(
                        SurfaceAttribute.STORY, 1,
                        SurfaceAttribute.SOILING_GRADE, 2,
                        SurfaceAttribute.YEARS_SINCE_CLEAN, 3,
                        SurfaceAttribute.DIVIDED_PANES, 1,
                        SurfaceAttribute.SCREENS, 1,
                        SurfaceAttribute.HARD_WATER, 2,
                        SurfaceAttribute.FROM_INSIDE, 1,
                        SurfaceAttribute.WEAK_SEALS, 1),
                plan.surfaces().getFirst().attributes());
    }

    @Test
    void every_bad_row_is_listed_with_its_own_line() {
        List<BadRow> bad = plan("customer,country,note,site,surface,surface_type,extent\n"
                        + "Good,US,\"two\nlines\",Home,Panes,window,4\n" // lines 2 and 3
                        + "Bad Type,US,,Home,Wall,wall,4\n" // 4
                        + ",US,,,,,\n" // 5
                        + "\n" // 6, empty
                        + "Short,US\n" // 7
                        + "Bad Country,XX,,Home,Panes,window,-4\n" // 8, bad twice
                        + "Good,,,Home,Panes,window,4\n") // 9
                .report()
                .badRows();
        assertEquals(
                List.of(4L, 5L, 7L, 8L, 8L, 9L), bad.stream().map(BadRow::line).toList());
        assertEquals(
                "The surface_type must be array or skylight or window or roof, not 'wall'",
                bad.getFirst().reason());
        assertEquals("names no customer", bad.get(1).reason());
        assertEquals("has 2 cells, but the header has 7", bad.get(2).reason());
        assertEquals("XX is not a country code of ISO 3166-1", bad.get(3).reason());
        assertEquals(
                "The extent must be a number such as 48 or 12.5, not '-4'",
                bad.get(4).reason());
        assertEquals(
                "lists the surface 'Panes' of this site again, after line 2",
                bad.get(5).reason());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '#',
            value = {
                "Mo,US,Home,Panes,window,4.5,,,,|Extent must be a whole number of pieces, not 4.5",
                "Mo,US,Home,Panes,window,\"4,5\",,,,|The extent must be a number such as 48 or 12.5, not '4,5'",
                "Mo,US,Home,Panes,window,0,,,,|Extent must be greater than zero",
                "Mo,US,Home,Panes,window,,,,,|The extent must be a number such as 48 or 12.5, not empty",
                "Mo,US,Home,,window,4,,,,|Name is required",
                "Mo,US,Home,Roof,roof,40,,,,|The unit must be FTK or MTK, not empty",
                "Mo,US,Home,Roof,roof,40,H87,,,|Extent must be in square feet (FTK) or square meters (MTK) for a surface of type roof, not in pieces (H87)",
                "Mo,US,Home,Roof,roof,40,YD2,,,|'YD2' is not a unit code known here (UN/ECE Recommendation 20)",
                "Mo,US,Home,Panes,window,4,,2,,|A surface of type window has no rows",
                "Mo,US,Home,Array,array,4,,5,,|Rows must be between 1 and 4, not 5",
                "Mo,US,Home,Array,array,4,,x,,|The rows must be a whole number, not 'x'",
                "Mo,US,Home,Array,array,4,,1,Other,|There is no panel manufacturer Other. Add the manufacturer first",
                "Mo,US,Home,Array,array,4,,1,,61|STORY must be between 0 and 60, not 61",
                "Mo,US,Home,Array,array,4,,1,,1.5|The story must be a whole number, not '1.5'",
                "Mo,US,,Array,array,4,,1,,|has columns of a site or surface, but names no site",
                "Mo,,Home,Array,array,4,,1,,|Country is required"
            })
    void a_bad_cell_is_named(String row, String reason) {
        assertEquals(List.of(new BadRow(2, reason)), bad(row + "\n"));
    }

    @Test
    void rows_that_contradict_or_repeat_an_earlier_one_are_bad() {
        assertEquals(
                List.of(
                        new BadRow(3, "has another country than line 2, where the customer is first listed"),
                        new BadRow(4, "says nothing that an earlier row has not said")),
                bad("Mo,US,Home,,,,,,,\nMo,CA,Barn,,,,,,,\nMo,US,Home,,,,,,,\n"));
    }

    @Test
    void a_bad_first_row_does_not_hide_the_others() {
        List<BadRow> bad = bad("Mo,ZZ,Home,A,window,1,,,,\nMo,,Home,B,window,1.5,,,,\nMo,,Home,C,window,2,,,,\n");
        assertEquals(List.of(2L, 3L), bad.stream().map(BadRow::line).toList());
    }

    @Test
    void an_astray_quote_ends_the_reading_but_not_the_report() {
        List<BadRow> bad = bad("Mo,US,Home,A,wall,1,,,,\nLou,US,\"Home\"x,A,window,1,,,,\nAnn,US,,,,,,,,\n");
        assertEquals(List.of(2L, 3L), bad.stream().map(BadRow::line).toList());
        assertTrue(
                bad.get(1).reason().startsWith("cannot be read, nor what follows"),
                bad.get(1).reason());
        assertEquals(2, bad("Lou,US,\"Home,A,window,1,,,,\n").getFirst().line());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "customer,country\n",
                "customer\nMo\n",
                "customer,country,customer\nMo,US,Mo\n",
                "customer,country,shoe size\nMo,US,9\n",
                "\"customer,country\nMo,US\n"
            })
    void what_is_no_such_table_is_refused(String text) {
        assertThrows(CustomersRefusal.UnreadableFile.class, () -> plan(text));
    }

    @Test
    void other_encodings_and_sizes_are_refused() {
        byte[] latin = "customer,country\nJosé,US\n".getBytes(StandardCharsets.ISO_8859_1);
        assertThrows(CustomersRefusal.UnreadableFile.class, () -> CustomerFile.read(latin));
        assertThrows(CustomersRefusal.UnreadableFile.class, () -> CustomerFile.read(new byte[10_000_001]));
        String many = "customer,country\n" + "Mo,US\n".repeat(20_001);
        assertThrows(CustomersRefusal.UnreadableFile.class, () -> plan(many));
    }
}
