package eaveside.customers;

import static eaveside.customers.CustomersFixture.OFFICE;
import static eaveside.customers.CustomersFixture.customer;
import static eaveside.customers.CustomersFixture.site;
import static eaveside.customers.CustomersFixture.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
import eaveside.kernel.KernelRefusal;
import eaveside.testing.Bench;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class MergeCustomersIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    @BeforeAll
    static void employ() {
        bench.employ(OFFICE.value());
    }

    @AfterAll
    static void verify() {
        bench.verifyBooks();
    }

    private static Customer saved(String name) {
        return bench.get(SaveCustomer.class).save(customer(name), OFFICE);
    }

    private static Customer merge(Customer from, Customer into) {
        return bench.get(MergeCustomers.class).merge(new MergeCustomers.Merge(from.id(), into.id(), OFFICE));
    }

    private static List<CustomerId> found(String words) {
        return bench.get(FindCustomers.class).find(words, false, null, 10).rows().stream()
                .map(CustomerLine::id)
                .toList();
    }

    private static Contact contact(CustomerId customer, String name) {
        return new Contact(ContactId.next(), customer, name, "", "", "", true, 0);
    }

    private static ReadCustomer read() {
        return bench.get(ReadCustomer.class);
    }

    @Test
    void every_id_of_a_merged_customer_answers_with_the_one_kept() {
        Customer kept = saved("Kept Gable");
        Customer merged = saved("Merged Ridge");
        Site site = bench.get(SaveSite.class).save(site(merged.id(), "Ridge House"), OFFICE);
        Contact contact = bench.get(SaveContact.class).save(contact(merged.id(), "Tilda Ridge"), OFFICE);

        assertEquals(kept, merge(merged, kept));
        assertEquals(kept, merge(merged, kept), "the same again changes nothing");
        assertEquals(
                1L,
                bench.value(
                        "select count(*) from audit_event a join customer c on a.xmin = c.xmin"
                                + " where a.action = 'customer.merge' and a.subject = ? and c.id = ?",
                        merged.id() + " into " + kept.id(),
                        merged.id().value()),
                "told once, in the transaction of the deed");

        assertEquals(kept, read().customer(merged.id()));
        assertEquals(List.of(kept.id(), merged.id()), read().idsOf(merged.id()));
        assertEquals(List.of(kept.id(), merged.id()), read().idsOf(kept.id()));
        assertEquals(Map.of(merged.id(), kept, kept.id(), kept), read().customers(List.of(merged.id(), kept.id())));
        assertEquals(List.of(site), read().sites(kept.id()));
        assertEquals(
                List.of(contact.id()),
                read().contacts(kept.id()).stream().map(Contact::id).toList());
        assertEquals(kept.id(), read().contacts(merged.id()).getFirst().customer());
        assertEquals(List.of(kept.id()), found("merged ridge"), "found by the words of both");
        assertEquals(List.of(kept.id()), found("kept gable"));
        assertEquals(List.of(kept.id()), found("ridge house"));
        assertEquals(List.of(), bench.get(FindDuplicates.class).of(kept.id()));
    }

    @Test
    void what_is_added_under_the_old_id_is_the_kept_ones() {
        Customer kept = saved("Old Id Kept");
        Customer merged = saved("Old Id Merged");
        Site before = bench.get(SaveSite.class).save(site(merged.id(), "Before"), OFFICE);
        merge(merged, kept);

        Site after = bench.get(SaveSite.class).save(site(merged.id(), "After"), OFFICE);
        assertEquals(kept.id(), after.customer());
        Contact contact = bench.get(SaveContact.class).save(contact(merged.id(), "Late"), OFFICE);
        assertEquals(kept.id(), contact.customer());
        // The site entered before can be edited under either id.
        for (CustomerId id : List.of(kept.id(), merged.id())) {
            Site stored = read().site(before.id());
            Site edit =
                    new Site(before.id(), id, "Under " + id, stored.address(), "", "", true, true, stored.version());
            assertEquals(
                    "Under " + id, bench.get(SaveSite.class).save(edit, OFFICE).name());
        }
        CustomersRefusal.MergedAlready refused = assertThrows(
                CustomersRefusal.MergedAlready.class,
                () -> bench.get(SaveCustomer.class).save(with(merged, "555-0199", ""), OFFICE));
        assertTrue(refused.text().contains("Old Id Kept"), refused.text());
    }

    @Test
    void a_merge_of_merged_ones_leads_to_the_last_in_one_step() {
        Customer first = saved("Chain First");
        Customer second = saved("Chain Second");
        Customer third = saved("Chain Third");
        merge(first, second);
        merge(second, third);

        assertEquals(third, read().customer(first.id()));
        assertEquals(3, read().idsOf(first.id()).size());
        assertEquals(third, merge(first, third), "they are one already");
        assertEquals(
                List.of("into"),
                assertThrows(CustomersRefusal.MergedAlready.class, () -> merge(saved("Chain Late"), second))
                        .fields());
        assertEquals(
                List.of("from"),
                assertThrows(CustomersRefusal.MergedAlready.class, () -> merge(second, saved("Chain Other")))
                        .fields());
        assertThrows(CustomersRefusal.MergedIntoItself.class, () -> merge(third, third));
        assertThrows(KernelRefusal.NotFound.class, () -> merge(third, customer("Nobody")));
        assertThrows(KernelRefusal.NotFound.class, () -> merge(customer("Nobody"), third));
    }

    @Test
    void of_two_who_merge_a_pair_both_ways_one_wins() throws Exception {
        Customer one = saved("Rival One");
        Customer other = saved("Rival Other");
        List<Callable<Customer>> merges = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            merges.add(() -> merge(one, other));
            merges.add(() -> merge(other, one));
        }
        int refused = 0;
        try (ExecutorService pool = Executors.newFixedThreadPool(4)) {
            for (Future<Customer> merge : pool.invokeAll(merges)) {
                try {
                    merge.get();
                } catch (ExecutionException e) {
                    assertTrue(e.getCause() instanceof CustomersRefusal.MergedAlready, e.toString());
                    refused++;
                }
            }
        }
        assertEquals(
                1L, bench.value("select count(*) from customer where name like 'Rival O%' and merged_into is null"));
        assertTrue(refused == 0 || refused == 3, refused + " refused");
    }

    @Test
    void the_database_refuses_chains_circles_and_undoing() {
        Customer kept = saved("Planted Kept");
        Customer merged = saved("Planted Merged");
        Customer other = saved("Planted Other");
        merge(merged, kept);
        String signed = ", merged_by = gen_random_uuid(), merged_at = now()";
        assertRefused(
                "merged only into one", "update customer set merged_into = '" + merged.id() + "'" + signed, other);
        assertRefused("merged only into one", "update customer set merged_into = '" + merged.id() + "'" + signed, kept);
        assertRefused("merged", "update customer set merged_into = null, merged_by = null, merged_at = null", merged);
        assertRefused("stays merged", "update customer set merged_into = '" + other.id() + "'", merged);
        assertRefused("check constraint", "update customer set merged_by = gen_random_uuid()", other);
        assertRefused("merged", "update customer set merged_into = id" + signed, other);
        assertEquals(
                1L,
                bench.value(
                        "select count(*) from customer where merged_into = ?",
                        kept.id().value()));
    }

    private static void assertRefused(String why, String update, Customer of) {
        SQLException refused = assertThrows(
                SQLException.class, () -> bench.executeAsApplication(update + " where id = '" + of.id() + "'"), update);
        assertTrue(refused.getMessage().contains(why), update + ": " + refused.getMessage());
    }
}
