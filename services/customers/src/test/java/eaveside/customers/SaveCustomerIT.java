package eaveside.customers;

import static eaveside.customers.CustomersFixture.OFFICE;
import static eaveside.customers.CustomersFixture.array;
import static eaveside.customers.CustomersFixture.customer;
import static eaveside.customers.CustomersFixture.savedSite;
import static eaveside.customers.CustomersFixture.site;
import static eaveside.customers.CustomersFixture.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Records;
import eaveside.kernel.SiteId;
import eaveside.testing.Bench;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class SaveCustomerIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    @BeforeAll
    static void employ() {
        bench.employ(OFFICE.value());
    }

    private static SaveCustomer save() {
        return bench.get(SaveCustomer.class);
    }

    private static ReadCustomer read() {
        return bench.get(ReadCustomer.class);
    }

    @Test
    void what_is_saved_is_read_back() {
        Customer saved = save().save(customer("Mo Fascia"), OFFICE);
        assertEquals(1, saved.version());
        Site home = bench.get(SaveSite.class).save(site(saved.id(), "Home"), OFFICE);
        Contact contact = bench.get(SaveContact.class)
                .save(
                        new Contact(
                                ContactId.next(),
                                saved.id(),
                                "Pat Soffit",
                                "Caretaker",
                                "pat@example.com",
                                "555-0199",
                                true,
                                0),
                        OFFICE);
        assertEquals(saved, read().customer(saved.id()));
        assertEquals(List.of(home), read().sites(saved.id()));
        assertEquals(home, read().site(home.id()));
        assertEquals(List.of(contact), read().contacts(saved.id()));
        assertEquals(Map.of(saved.id(), saved), read().customers(List.of(saved.id(), CustomerId.next())));
        assertEquals(Map.of(home.id(), home), read().sites(Set.of(home.id())));
        assertEquals(Map.of(), read().customers(List.of()));
        assertEquals(
                OFFICE.value(),
                bench.value(
                        "select changed_by from customer where id = ?",
                        saved.id().value()));
    }

    @Test
    void a_retry_changes_nothing_and_other_content_under_the_id_is_refused() {
        Customer sent = customer("Retry");
        Customer saved = save().save(sent, OFFICE);
        assertEquals(saved, save().save(sent, OFFICE));
        KernelRefusal.Stale refused =
                assertThrows(KernelRefusal.Stale.class, () -> save().save(with(sent, "555-0111", ""), OFFICE));
        assertEquals(List.of("phone"), refused.fields());
        Customer edit = with(saved, "555-0112", "Rings twice");
        Customer edited = save().save(edit, OFFICE);
        assertEquals(2, edited.version());
        assertEquals(edited, save().save(edit, OFFICE), "an edit sent again is a retry too");
    }

    @Test
    void how_a_customer_would_like_to_be_reached_is_kept_and_compared() {
        Customer unsaid = save().save(customer("Reached"), OFFICE);
        assertNull(unsaid.preferredContact());
        Customer text = save().save(Records.with(unsaid, "preferredContact", PreferredContact.TEXT), OFFICE);
        assertEquals(PreferredContact.TEXT, read().customer(unsaid.id()).preferredContact());
        assertEquals(2, text.version());
        KernelRefusal.Stale refused = assertThrows(
                KernelRefusal.Stale.class,
                () -> save().save(Records.with(unsaid, "preferredContact", PreferredContact.CALL), OFFICE));
        assertEquals(List.of("preferredContact"), refused.fields());
        assertNull(save().save(Records.with(text, "preferredContact", null), OFFICE)
                .preferredContact());
    }

    @Test
    void every_save_stands_on_the_audit_log_in_its_own_transaction() {
        Customer sent = customer("Audited");
        Customer saved = save().save(sent, OFFICE);
        save().save(sent, OFFICE);
        save().save(with(saved, "555-0113", ""), OFFICE);
        assertThrows(KernelRefusal.Stale.class, () -> save().save(with(saved, "555-0114", ""), OFFICE));
        String subject = saved.id().toString();
        assertEquals(
                2L,
                bench.value("select count(*) from audit_event where action = 'customer.save' and subject = ?", subject),
                "one for each deed, none for a retry or a refusal");
        assertEquals(
                1L,
                bench.value(
                        "select count(*) from audit_event a join customer c on a.subject = c.id::text and a.xmin = c.xmin"
                                + " where c.id = ?",
                        saved.id().value()),
                "written in the transaction of the deed");
    }

    @Test
    void the_loser_of_a_rival_edit_sees_both() {
        Customer start = save().save(customer("Rivals"), OFFICE);
        Customer mine = with(start, "555-0101", "mine");
        Customer theirs = save().save(with(start, "555-0102", "theirs"), OFFICE);
        KernelRefusal.Stale refused = assertThrows(KernelRefusal.Stale.class, () -> save().save(mine, OFFICE));
        assertEquals(409, refused.type().status());
        assertEquals(mine, refused.yours());
        assertEquals(theirs, refused.theirs());
        assertEquals(List.of("phone", "note"), refused.fields());
        assertEquals(theirs, read().customer(start.id()));
    }

    @Test
    void of_rivals_at_the_same_moment_one_wins_and_a_double_click_saves_once() throws Exception {
        Customer fresh = customer("Double click");
        List<Callable<Customer>> clicks = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            clicks.add(() -> save().save(fresh, OFFICE));
        }
        try (ExecutorService pool = Executors.newFixedThreadPool(4)) {
            for (Future<Customer> click : pool.invokeAll(clicks)) {
                assertEquals(1, click.get().version());
            }
            assertEquals(
                    1L,
                    bench.value(
                            "select count(*) from audit_event where subject = ?",
                            fresh.id().toString()));
            List<Callable<Customer>> rivals = new ArrayList<>();
            for (int i = 0; i < 6; i++) {
                Customer edit = with(fresh.withVersion(1), "555-010" + i, "");
                rivals.add(() -> save().save(edit, OFFICE));
            }
            int won = 0;
            for (Future<Customer> rival : pool.invokeAll(rivals)) {
                try {
                    assertEquals(2, rival.get().version());
                    won++;
                } catch (ExecutionException e) {
                    assertTrue(e.getCause() instanceof KernelRefusal.Stale, e.toString());
                }
            }
            assertEquals(1, won);
        }
    }

    @Test
    void unknown_things_and_moves_are_refused() {
        SaveSite saveSite = bench.get(SaveSite.class);
        Site home = savedSite(bench, "Stays");
        Customer other = save().save(customer("Other"), OFFICE);
        assertThrows(KernelRefusal.NotFound.class, () -> saveSite.save(site(CustomerId.next(), "Nowhere"), OFFICE));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> saveSite.save(site(other.id(), "Ghost").withVersion(4), OFFICE));
        Site moved = new Site(home.id(), other.id(), home.name(), home.address(), "", "", true, true, home.version());
        assertThrows(KernelRefusal.Fixed.class, () -> saveSite.save(moved, OFFICE));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> save().save(customer("Ghost").withVersion(1), OFFICE));
        assertThrows(KernelRefusal.NotFound.class, () -> read().customer(CustomerId.next()));
        assertThrows(KernelRefusal.NotFound.class, () -> read().site(SiteId.next()));
        Contact lost = new Contact(ContactId.next(), CustomerId.next(), "Lost", "", "", "", true, 0);
        assertThrows(
                KernelRefusal.NotFound.class, () -> bench.get(SaveContact.class).save(lost, OFFICE));
        assertEquals(
                0L,
                bench.value(
                        "select count(*) from contact where id = ?", lost.id().value()));
    }

    @Test
    void the_database_refuses_planted_bad_rows() {
        Site home = savedSite(bench, "Planted");
        bench.get(SaveSurface.class).save(array(home.id(), 48, 2, null), OFFICE);
        for (String bad : List.of(
                "update customer set name = ' '",
                "update customer set type = 'CLUB'",
                "update customer set country = 'u1'",
                "update customer set email = 'no address'",
                "update customer set payment_term_days = 366",
                "update customer set version = 0",
                "update customer set preferred_contact = 'LETTER'",
                "update site set name = ''",
                "update surface set extent = 0",
                "update surface set extent = 4.5",
                "update surface set unit = 'FTK'",
                "update surface set row_count = 0",
                "update surface set row_count = 49",
                "update surface_attribute set value = 61 where attribute = 'STORY'",
                "update surface_attribute set attribute = 'GROWTH_GRADE' where attribute = 'STORY'",
                "update surface_attribute set attribute = 'NO_SUCH' where attribute = 'STORY'",
                "insert into panel_manufacturer (name, max_pressure_kpa, alkali_forbidden, source, version, changed_by,"
                        + " changed_at) values ('Bad', 0, true, '', 1, gen_random_uuid(), now())")) {
            assertRefused("check constraint", bad);
        }
        assertRefused("foreign key", "update surface_attribute set type = 'ROOF' where attribute = 'STORY'");
        assertRefused("foreign key", "update surface set panel_manufacturer = 'Unheard of'");
        for (String forbidden : List.of(
                "delete from customer",
                "delete from surface",
                "update site set customer_id = gen_random_uuid()",
                "update surface set site_id = gen_random_uuid()",
                "update surface set type = 'ROOF'",
                "update surface_count set to_extent = 1",
                "delete from surface_count")) {
            assertRefused("permission denied", forbidden);
        }
        assertRefused("keeps its id", "update customer set id = gen_random_uuid()");
        AssertionError backed =
                assertThrows(AssertionError.class, () -> bench.execute("update surface_count set to_extent = 1"));
        assertTrue(String.valueOf(backed.getCause()).contains("append-only"));
    }

    private static void assertRefused(String why, String sql) {
        SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql), sql);
        assertTrue(refused.getMessage().contains(why), sql + ": " + refused.getMessage());
    }
}
