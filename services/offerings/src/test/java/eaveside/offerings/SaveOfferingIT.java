package eaveside.offerings;

import static eaveside.offerings.OfferingsFixture.OWNER;
import static eaveside.offerings.OfferingsFixture.PADS;
import static eaveside.offerings.OfferingsFixture.SOAP;
import static eaveside.offerings.OfferingsFixture.line;
import static eaveside.offerings.OfferingsFixture.panels;
import static eaveside.offerings.OfferingsFixture.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.OfferingId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
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

class SaveOfferingIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static ServiceLine arrays;

    @BeforeAll
    static void found() {
        OfferingsFixture.found(bench);
        arrays = bench.get(SaveServiceLine.class).save(line("ARRAYS"), OWNER);
    }

    @Test
    void what_is_saved_is_read_back() {
        SaveOffering save = bench.get(SaveOffering.class);
        Catalogue catalogue = bench.get(Catalogue.class);
        Offering saved = save.save(panels(arrays.id(), "READ-BACK"), OWNER);
        assertEquals(1, saved.version());
        assertEquals(saved, catalogue.offering(saved.id()));
        assertTrue(catalogue.offerings().contains(saved));
        assertTrue(catalogue.lines().contains(arrays));
        assertEquals(arrays, catalogue.line(arrays.id()));

        List<StandardConsumable> swapped = List.of(
                new StandardConsumable(PADS, Quantity.of("0.003", Unit.PIECE)),
                new StandardConsumable(SOAP, Quantity.of("0.35", Unit.US_FLUID_OUNCE)));
        Offering edited = save.save(with(saved, "Panel washed", Unit.PIECE, swapped), OWNER);
        assertEquals(2, edited.version());
        assertEquals(swapped, catalogue.offering(saved.id()).consumables());
        Offering bare = save.save(with(edited, "Panel washed", Unit.PIECE, List.of()), OWNER);
        assertEquals(3, bare.version(), "consumables alone make a version too");
        assertEquals(bare, catalogue.offering(saved.id()));
    }

    @Test
    void a_retry_changes_nothing_and_other_content_under_the_id_is_refused() {
        SaveOffering save = bench.get(SaveOffering.class);
        Offering sent = panels(arrays.id(), "RETRY");
        Offering saved = save.save(sent, OWNER);
        assertEquals(saved, save.save(sent, OWNER));
        KernelRefusal.Stale refused = assertThrows(
                KernelRefusal.Stale.class, () -> save.save(with(sent, "Other", Unit.PIECE, sent.consumables()), OWNER));
        assertEquals(List.of("name"), refused.fields());
        ServiceLine again = arrays.withVersion(0);
        assertEquals(arrays, bench.get(SaveServiceLine.class).save(again, OWNER));
    }

    @Test
    void the_loser_of_a_rival_edit_sees_both() {
        SaveOffering save = bench.get(SaveOffering.class);
        Offering read = save.save(panels(arrays.id(), "RIVAL"), OWNER);
        Offering mine = with(read, "Mine", Unit.PIECE, read.consumables());
        Offering theirs = save.save(with(read, "Theirs", Unit.PIECE, read.consumables()), OWNER);
        KernelRefusal.Stale refused = assertThrows(KernelRefusal.Stale.class, () -> save.save(mine, OWNER));
        assertEquals(mine, refused.yours());
        assertEquals(theirs, refused.theirs());
        assertEquals(theirs, bench.get(Catalogue.class).offering(read.id()));
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
        assertThrows(OfferingsRefusal.CodeTaken.class, () -> lines.save(line("ARRAYS"), OWNER));
        SaveOffering save = bench.get(SaveOffering.class);
        save.save(panels(arrays.id(), "TAKEN"), OWNER);
        assertThrows(OfferingsRefusal.CodeTaken.class, () -> save.save(panels(arrays.id(), "TAKEN"), OWNER));
    }

    @Test
    void unknown_things_and_fixed_fields_are_refused() {
        SaveOffering save = bench.get(SaveOffering.class);
        Catalogue catalogue = bench.get(Catalogue.class);
        assertThrows(
                OfferingsRefusal.NoSuchServiceLine.class,
                () -> save.save(panels(ServiceLineId.next(), "NOLINE"), OWNER));
        Offering plain = panels(arrays.id(), "FIXED");
        Offering untaxed = new Offering(
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
        assertThrows(OfferingsRefusal.NoSuchTaxCode.class, () -> save.save(untaxed, OWNER));
        assertThrows(OfferingsRefusal.NoSuchOffering.class, () -> save.save(plain.withVersion(3), OWNER));
        Offering saved = save.save(plain, OWNER);
        assertThrows(
                OfferingsRefusal.Fixed.class, () -> save.save(with(saved, "x", Unit.ONE, saved.consumables()), OWNER));
        assertThrows(OfferingsRefusal.NoSuchOffering.class, () -> catalogue.offering(OfferingId.next()));
        assertThrows(OfferingsRefusal.NoSuchServiceLine.class, () -> catalogue.line(ServiceLineId.next()));
        assertThrows(
                OfferingsRefusal.NoSuchServiceLine.class,
                () -> bench.get(SaveServiceLine.class).save(line("GHOST").withVersion(2), OWNER));
    }

    @Test
    void the_database_refuses_planted_bad_rows() {
        Offering good = bench.get(SaveOffering.class).save(panels(arrays.id(), "PLANTED"), OWNER);
        String id = "'" + good.id() + "'";
        for (String bad : List.of(
                "update service_line set code = 'lower'",
                "update service_line set name = ' '",
                "update offering set minutes_per_unit = -1 where id = " + id,
                "update offering set surface_kind = 'ROOF' where id = " + id,
                "update offering set surface_kind = 'WALL' where id = " + id,
                "update offering set version = 0 where id = " + id,
                "update offering_consumable set quantity = 0 where offering_id = " + id,
                "update offering_consumable set unit = 'XXX' where offering_id = " + id)) {
            assertRefused("check constraint", bad);
        }
        assertRefused("foreign key", "update offering set tax_code = 'GONE' where id = " + id);
        assertRefused(
                "unique", "update offering_consumable set stock_item_id = '" + SOAP + "' where offering_id = " + id);
        assertRefused("permission denied", "update offering set unit = 'C62' where id = " + id);
        assertRefused("permission denied", "update offering set service_line_id = gen_random_uuid()");
        assertRefused("permission denied", "delete from offering where id = " + id);
        assertRefused("permission denied", "delete from service_line");
    }

    private static void assertRefused(String why, String sql) {
        SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql), sql);
        assertTrue(refused.getMessage().contains(why), sql + ": " + refused.getMessage());
    }
}
