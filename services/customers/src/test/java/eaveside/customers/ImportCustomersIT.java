package eaveside.customers;

import static eaveside.customers.CustomersFixture.OFFICE;
import static eaveside.customers.CustomersFixture.customer;
import static eaveside.customers.CustomersFixture.manufacturer;
import static eaveside.customers.CustomersFixture.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.testing.Bench;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class ImportCustomersIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    @BeforeAll
    static void manufacturers() {
        bench.employ(OFFICE.value());
        bench.get(SavePanelManufacturer.class).save(manufacturer("First Light", 700, true), OFFICE);
    }

    private static ImportCustomers use() {
        return bench.get(ImportCustomers.class);
    }

    private static byte[] file(String rows) {
        return (ImportPlanTest.HEADER + rows).getBytes(StandardCharsets.UTF_8);
    }

    private static List<Object> counts() {
        return List.of(
                bench.value("select count(*) from customer"),
                bench.value("select count(*) from site"),
                bench.value("select count(*) from surface"),
                bench.value("select count(*) from surface_count"),
                bench.value("select count(*) from customer_import"));
    }

    @Test
    void a_clean_file_comes_in_once() {
        byte[] file = file("""
                Imported One,US,Home,South array,array,48,,2,FIRST LIGHT,2
                Imported One,,Home,Skylights,skylight,6,,,,
                Imported Two,US,Shop,Roof,roof,1900,FTK,,,1
                """);
        List<Object> before = counts();
        assertEquals(new ImportReport(3, 2, 2, 3, List.of(), null), use().tryOut(file));
        assertEquals(before, counts(), "a dry run stores nothing");
        ImportReport report = use().run(file, OFFICE);
        assertTrue(report.isClean());
        assertNull(report.importedBefore());
        List<Object> after = counts();

        CustomerLine one = bench.get(FindCustomers.class)
                .find("imported one", true, null, 5)
                .rows()
                .getFirst();
        Site home = bench.get(ReadCustomer.class).sites(one.id()).getFirst();
        List<Surface> surfaces = bench.get(ReadSurfaces.class).ofSite(home.id());
        assertEquals(2, surfaces.size());
        Surface array = surfaces.getFirst();
        assertEquals(Quantity.of(48, Unit.PIECE), array.extent());
        assertTrue(bench.get(ReadPanelManufacturers.class).alkaliForbiddenOn(array.id()));
        assertEquals(1, bench.get(ReadSurfaces.class).history(array.id()).size());
        assertEquals(2, array.attributes().get(SurfaceAttribute.STORY));

        var at = bench.clock().instant();
        bench.clock().forward(Duration.ofHours(1));
        ImportReport again = use().run(file, OFFICE);
        assertEquals(at, again.importedBefore());
        assertEquals(new ImportReport(3, 2, 2, 3, List.of(), at), again);
        assertEquals(again, use().tryOut(file));
        assertEquals(after, counts(), "the same file again changes nothing");
        assertEquals(
                2,
                bench.get(SaveSurface.class)
                        .save(array.withExtent(Quantity.of(50, Unit.PIECE)), OFFICE)
                        .version());
    }

    @Test
    void one_bad_row_keeps_the_whole_file_out() {
        byte[] file = file("""
                All or nothing,US,Home,Panes,window,22,,,,
                Spoiler,US,Home,Panes,window,none,,,,
                """);
        List<Object> before = counts();
        ImportReport tried = use().tryOut(file);
        CustomersRefusal.BadRows refused = assertThrows(CustomersRefusal.BadRows.class, () -> use().run(file, OFFICE));
        assertEquals(tried, refused.report());
        assertEquals(
                List.of(3L),
                tried.badRows().stream().map(ImportReport.BadRow::line).toList());
        assertEquals(before, counts());
    }

    @Test
    void a_customer_who_is_here_already_is_a_bad_row() {
        bench.get(SaveCustomer.class).save(customer("Renée Parapet"), OFFICE);
        ImportReport report = use().tryOut(file("New Here,US,,,,,,,,\nRENEE  parapet,US,,,,,,,,\n"));
        assertEquals(
                List.of(new ImportReport.BadRow(
                        3, "names the customer 'RENEE  parapet', who has been entered already")),
                report.badRows());
    }

    @Test
    void what_is_here_already_and_says_the_same_is_left_as_it_is() {
        String rows = """
                Known Entire,US,Home,South array,array,48,,2,FIRST LIGHT,2
                Known Entire,,Home,Skylights,skylight,6,,,,
                """;
        use().run(file(rows), OFFICE);
        List<Object> before = counts();
        byte[] again = file(rows + "\n");
        ImportReport tried = use().tryOut(again);
        assertEquals(new ImportReport(2, 0, 0, 0, List.of(), null, 1, List.of()), tried);
        assertEquals(tried, use().run(again, OFFICE));
        assertEquals(before, counts());
        // With somebody new beside it, only the new one comes in.
        ImportReport more = use().run(file(rows + "Known Beside,US,,,,,,,,\n"), OFFICE);
        assertEquals(new ImportReport(3, 1, 0, 0, List.of(), null, 1, List.of()), more);
        assertEquals(
                1, use().run(file(rows + "Known Beside,US,,,,,,,,\n"), OFFICE).unchanged());
        // With a surface that is not here, it is no longer the same.
        assertEquals(
                2,
                use().tryOut(file(rows + "Known Entire,,Home,Back windows,window,4,,,,\n"))
                        .badRows()
                        .getFirst()
                        .line());
    }

    @Test
    void new_customers_who_may_be_here_already_come_in_only_when_that_is_said() {
        Customer known = with(customer("Alike Stored"), "+1 (312) 555-0181", "");
        bench.get(SaveCustomer.class).save(known, OFFICE);
        byte[] file = """
                customer,country,phone
                Alike New,US,312 555 0181
                Alike Twin,US,312-555-0182
                Alike Twin's Twin,US,(312) 555-0182
                """.getBytes(StandardCharsets.UTF_8);
        List<Object> before = counts();
        ImportReport tried = use().tryOut(file);
        assertEquals(
                List.of(
                        new ImportReport.DuplicateRow(
                                2, "Alike New", "Alike Stored", known.id(), null, Set.of(Duplicate.Because.PHONE)),
                        new ImportReport.DuplicateRow(
                                4, "Alike Twin's Twin", "Alike Twin", null, 3L, Set.of(Duplicate.Because.PHONE))),
                tried.duplicateRows());
        CustomersRefusal.DuplicateRows refused =
                assertThrows(CustomersRefusal.DuplicateRows.class, () -> use().run(file, OFFICE));
        assertEquals(tried.duplicateRows(), refused.report().duplicateRows());
        assertEquals(before, counts());
        ImportReport first = use().run(file, OFFICE, true);
        assertEquals(3, first.customers());
        var at = bench.clock().instant();
        assertEquals(
                new ImportReport(3, 3, 0, 0, List.of(), at, 0, first.duplicateRows()),
                use().run(file, OFFICE, true),
                "the same again is answered like the first time");
        assertEquals(
                3L,
                bench.value(
                        "select count(*) from customer where name in ('Alike New', 'Alike Twin', 'Alike Twin''s Twin')"));
    }

    @Test
    void a_row_that_is_bad_in_several_ways_is_one_row() {
        byte[] file = """
                customer,country,phone,city
                Counted Once,US,555-0191,Gutterby
                Counted Once,US,555-0192,Elsewhere
                """.getBytes(StandardCharsets.UTF_8);
        ImportReport tried = use().tryOut(file);
        assertEquals(2, tried.rows());
        assertEquals(
                List.of(3L, 3L),
                tried.badRows().stream().map(ImportReport.BadRow::line).toList());
        assertEquals(1, tried.badRowCount());
        CustomersRefusal.BadRows refused = assertThrows(CustomersRefusal.BadRows.class, () -> use().run(file, OFFICE));
        assertTrue(refused.text().startsWith("Nothing was imported: one row is bad, in line 3"), refused.text());
    }

    @Test
    void the_same_file_from_two_hands_comes_in_once() throws Exception {
        byte[] file = file("Two Hands,US,Home,Panes,window,3,,,,\n");
        List<Callable<ImportReport>> hands = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            hands.add(() -> use().run(file, OFFICE));
        }
        int first = 0;
        try (ExecutorService pool = Executors.newFixedThreadPool(4)) {
            for (Future<ImportReport> hand : pool.invokeAll(hands)) {
                first += hand.get().importedBefore() == null ? 1 : 0;
            }
        }
        assertEquals(1, first);
        assertEquals(1L, bench.value("select count(*) from customer where name = 'Two Hands'"));
        assertEquals(
                1L,
                bench.value(
                        "select count(*) from audit_event a join customer c on a.xmin = c.xmin"
                                + " where a.action = 'customers.import' and a.subject = '1 customers' and c.name = 'Two Hands'"),
                "told once, in the transaction of the deed");
    }

    @Test
    void a_large_file_comes_in_whole() {
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < 3_000; i++) {
            rows.append("Large ")
                    .append(i / 3)
                    .append(",US,Home,Panes ")
                    .append(i)
                    .append(",window,4,,,,2\n");
        }
        ImportReport report = use().run(file(rows.toString()), OFFICE);
        assertEquals(new ImportReport(3_000, 1_000, 1_000, 3_000, List.of(), null), report);
        assertEquals(
                3_000L,
                bench.value("select count(*) from surface s join surface_attribute a on a.surface_id = s.id"
                        + " join surface_count c on c.surface_id = s.id where s.name like 'Panes %' and a.value = 2"));
    }

    @Test
    void the_database_refuses_a_planted_import() {
        for (String bad : List.of(
                "insert into customer_import values ('xyz', 1, 1, 0, 0, gen_random_uuid(), now())",
                "insert into customer_import values (repeat('a', 64), 0, 1, 0, 0, gen_random_uuid(), now())")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(bad), bad);
            assertTrue(refused.getMessage().contains("check constraint"), refused.getMessage());
        }
        SQLException refused =
                assertThrows(SQLException.class, () -> bench.executeAsApplication("delete from customer_import"));
        assertTrue(refused.getMessage().contains("permission denied"), refused.getMessage());
    }
}
