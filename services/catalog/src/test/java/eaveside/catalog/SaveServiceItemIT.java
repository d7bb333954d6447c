package eaveside.catalog;

import static eaveside.catalog.CatalogFixture.OWNER;
import static eaveside.catalog.CatalogFixture.PADS;
import static eaveside.catalog.CatalogFixture.SOAP;
import static eaveside.catalog.CatalogFixture.line;
import static eaveside.catalog.CatalogFixture.panels;
import static eaveside.catalog.CatalogFixture.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.testing.Bench;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class SaveServiceItemIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static ServiceLine arrays;

    @BeforeAll
    static void found() {
        CatalogFixture.found(bench);
        arrays = bench.get(SaveServiceLine.class).save(line("ARRAYS"), OWNER);
    }

    @Test
    void what_is_saved_is_read_back() {
        SaveServiceItem save = bench.get(SaveServiceItem.class);
        Catalog catalog = bench.get(Catalog.class);
        ServiceItem saved = save.save(panels(arrays.id(), "READ-BACK"), OWNER);
        assertEquals(1, saved.version());
        assertEquals(saved, catalog.serviceItem(saved.id()));
        assertTrue(catalog.serviceItems().contains(saved));
        assertTrue(catalog.lines().contains(arrays));
        assertEquals(arrays, catalog.line(arrays.id()));

        List<StandardConsumable> swapped = List.of(
                new StandardConsumable(PADS, Quantity.of("0.003", Unit.PIECE)),
                new StandardConsumable(SOAP, Quantity.of("0.35", Unit.US_FLUID_OUNCE)));
        ServiceItem edited = save.save(with(saved, "Panel washed", Unit.PIECE, swapped), OWNER);
        assertEquals(2, edited.version());
        assertEquals(swapped, catalog.serviceItem(saved.id()).consumables());
        ServiceItem bare = save.save(with(edited, "Panel washed", Unit.PIECE, List.of()), OWNER);
        assertEquals(3, bare.version(), "consumables alone make a version too");
        assertEquals(bare, catalog.serviceItem(saved.id()));
    }

    @Test
    void a_retry_changes_nothing_and_other_content_under_the_id_is_refused() {
        SaveServiceItem save = bench.get(SaveServiceItem.class);
        ServiceItem sent = panels(arrays.id(), "RETRY");
        ServiceItem saved = save.save(sent, OWNER);
        assertEquals(saved, save.save(sent, OWNER));
        KernelRefusal.Stale refused = assertThrows(
                KernelRefusal.Stale.class, () -> save.save(with(sent, "Other", Unit.PIECE, sent.consumables()), OWNER));
        assertEquals(List.of("name"), refused.fields());
        ServiceLine again = arrays.withVersion(0);
        assertEquals(arrays, bench.get(SaveServiceLine.class).save(again, OWNER));
    }

    @Test
    void the_loser_of_a_rival_edit_sees_both() {
        SaveServiceItem save = bench.get(SaveServiceItem.class);
        ServiceItem read = save.save(panels(arrays.id(), "RIVAL"), OWNER);
        ServiceItem mine = with(read, "Mine", Unit.PIECE, read.consumables());
        ServiceItem theirs = save.save(with(read, "Theirs", Unit.PIECE, read.consumables()), OWNER);
        KernelRefusal.Stale refused = assertThrows(KernelRefusal.Stale.class, () -> save.save(mine, OWNER));
        assertEquals(mine, refused.yours());
        assertEquals(theirs, refused.theirs());
        assertEquals(theirs, bench.get(Catalog.class).serviceItem(read.id()));
        assertEquals(
                "Mine", save.save(mine.withVersion(theirs.version()), OWNER).name());
    }

    @Test
    void of_rivals_at_the_same_moment_one_wins() throws Exception {
        ServiceLine read = bench.get(SaveServiceLine.class).save(line("MOMENT"), OWNER);
        int won = 0;
        try (ExecutorService pool = Executors.newFixedThreadPool(4)) {
            List<Callable<ServiceLine>> rivals = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                ServiceLine edit = new ServiceLine(read.id(), read.code(), "Name " + i, true, read.version());
                rivals.add(() -> bench.get(SaveServiceLine.class).save(edit, OWNER));
            }
            for (Future<ServiceLine> rival : pool.invokeAll(rivals)) {
                try {
                    assertEquals(2, rival.get().version());
                    won++;
                } catch (ExecutionException e) {
                    assertTrue(e.getCause() instanceof KernelRefusal.Stale, e.toString());
                }
            }
        }
        assertEquals(1, won);
    }

    @Test
    void codes_are_taken_once() {
        SaveServiceLine lines = bench.get(SaveServiceLine.class);
        assertThrows(KernelRefusal.Taken.class, () -> lines.save(line("ARRAYS"), OWNER));
        SaveServiceItem save = bench.get(SaveServiceItem.class);
        save.save(panels(arrays.id(), "TAKEN"), OWNER);
        assertThrows(KernelRefusal.Taken.class, () -> save.save(panels(arrays.id(), "TAKEN"), OWNER));
    }

    @Test
    void unknown_things_and_fixed_fields_are_refused() {
        SaveServiceItem save = bench.get(SaveServiceItem.class);
        Catalog catalog = bench.get(Catalog.class);
        assertThrows(KernelRefusal.NotFound.class, () -> save.save(panels(ServiceLineId.next(), "NOLINE"), OWNER));
        ServiceItem plain = panels(arrays.id(), "FIXED");
        ServiceItem untaxed = new ServiceItem(
                plain.id(),
                arrays.id(),
                "FIXED",
                "x",
                Unit.PIECE,
                StandardMinutes.ZERO,
                new TaxCode("NONE"),
                null,
                "",
                List.of(),
                true,
                0);
        assertThrows(KernelRefusal.NotFound.class, () -> save.save(untaxed, OWNER));
        assertThrows(KernelRefusal.NotFound.class, () -> save.save(plain.withVersion(3), OWNER));
        ServiceItem saved = save.save(plain, OWNER);
        assertThrows(
                KernelRefusal.Fixed.class, () -> save.save(with(saved, "x", Unit.ONE, saved.consumables()), OWNER));
        assertThrows(KernelRefusal.NotFound.class, () -> catalog.serviceItem(ServiceItemId.next()));
        assertThrows(KernelRefusal.NotFound.class, () -> catalog.line(ServiceLineId.next()));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> bench.get(SaveServiceLine.class).save(line("GHOST").withVersion(2), OWNER));
    }

    @Test
    void nobody_works_more_than_a_hundred_thousand_minutes_on_one_piece() {
        SaveServiceItem save = bench.get(SaveServiceItem.class);
        ServiceItem plain = panels(arrays.id(), "SLOW");
        var refused = assertThrows(
                KernelRefusal.TooLarge.class,
                () -> save.save(Records.with(plain, "minutesPerUnit", StandardMinutes.of("100000.0001")), OWNER));
        assertEquals(List.of("minutesPerUnit"), refused.fields());
        assertEquals(
                1,
                save.save(Records.with(plain, "minutesPerUnit", StandardMinutes.of(100_000)), OWNER)
                        .version());
    }

    @Test
    void a_consumable_is_one_of_stock_in_a_unit_like_its_own() {
        SaveServiceItem save = bench.get(SaveServiceItem.class);
        ServiceItem plain = panels(arrays.id(), "STOCKED");
        StockItemId unknown = StockItemId.next();
        ServiceItem strange = with(
                plain,
                "Panel cleaned",
                Unit.PIECE,
                List.of(new StandardConsumable(unknown, Quantity.of(1, Unit.MILLILITER))));
        KernelRefusal.NotFound refused = assertThrows(KernelRefusal.NotFound.class, () -> save.save(strange, OWNER));
        assertEquals(List.of("consumables[0].item"), refused.fields());
        assertTrue(refused.text().contains(unknown.toString()), refused.text());
        ServiceItem bySquareFoot = with(
                plain,
                "Panel cleaned",
                Unit.PIECE,
                List.of(new StandardConsumable(SOAP, Quantity.of(1, Unit.SQUARE_FOOT))));
        var wrongUnit = assertThrows(KernelRefusal.WrongUnit.class, () -> save.save(bySquareFoot, OWNER));
        assertEquals(List.of("consumables[0].perUnit"), wrongUnit.fields());
        ServiceItem byMilliliter = with(
                plain,
                "Panel cleaned",
                Unit.PIECE,
                List.of(new StandardConsumable(SOAP, Quantity.of(10, Unit.MILLILITER))));
        assertEquals(1, save.save(byMilliliter, OWNER).version());
    }

    @Test
    void two_at_once_on_a_new_id_are_one_and_its_retry() throws Exception {
        ServiceLine sent = line("TWICE");
        try (ExecutorService pool = Executors.newFixedThreadPool(4)) {
            List<Callable<ServiceLine>> sendings = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                sendings.add(() -> bench.get(SaveServiceLine.class).save(sent, OWNER));
            }
            for (Future<ServiceLine> sending : pool.invokeAll(sendings)) {
                assertEquals(1, sending.get().version());
            }
        }
        assertEquals(
                1L,
                bench.value(
                        "select count(*) from audit_event where action = 'service-line.save' and subject = ?",
                        sent.id().toString()));
    }

    @Test
    void everything_that_is_wrong_is_told_at_once() {
        KernelRefusal.Several refused = assertThrows(
                KernelRefusal.Several.class, () -> new ServiceLine(ServiceLineId.next(), "no code", " ", true, 0));
        assertEquals(List.of("code", "name"), refused.fields());
    }

    @Test
    void the_database_refuses_planted_bad_rows() {
        ServiceItem good = bench.get(SaveServiceItem.class).save(panels(arrays.id(), "PLANTED"), OWNER);
        String id = "'" + good.id() + "'";
        for (String bad : List.of(
                "update service_line set code = 'lower'",
                "update service_line set name = ' '",
                "update service_item set minutes_per_unit = -1 where id = " + id,
                "update service_item set surface_type = 'ROOF' where id = " + id,
                "update service_item set surface_type = 'WALL' where id = " + id,
                "update service_item set version = 0 where id = " + id,
                "update service_item_consumable set quantity = 0 where service_item_id = " + id,
                "update service_item_consumable set unit = 'QQQ' where service_item_id = " + id)) {
            assertRefused("check constraint", bad);
        }
        assertRefused("foreign key", "update service_item set tax_code = 'GONE' where id = " + id);
        assertRefused(
                "unique",
                "update service_item_consumable set stock_item_id = '" + SOAP + "' where service_item_id = " + id);
        assertRefused("permission denied", "update service_item set unit = 'C62' where id = " + id);
        assertRefused("permission denied", "update service_item set service_line_id = gen_random_uuid()");
        assertRefused("permission denied", "delete from service_item where id = " + id);
        assertRefused("permission denied", "delete from service_line");
    }

    private static void assertRefused(String why, String sql) {
        SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql), sql);
        assertTrue(refused.getMessage().contains(why), sql + ": " + refused.getMessage());
    }
}
