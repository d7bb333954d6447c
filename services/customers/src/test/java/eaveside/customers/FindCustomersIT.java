package eaveside.customers;

import static eaveside.customers.CustomersFixture.OFFICE;
import static eaveside.customers.CustomersFixture.address;
import static eaveside.customers.CustomersFixture.customer;
import static eaveside.customers.CustomersFixture.site;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Records;
import eaveside.kernel.Slice;
import eaveside.testing.Bench;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FindCustomersIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    @BeforeAll
    static void town() {
        bench.employ(OFFICE.value());
        SaveCustomer save = bench.get(SaveCustomer.class);
        save.save(named("Zoë Ångström", "zoe@example.com", "555-0123", true), OFFICE);
        Customer bakery = save.save(named("Bakery at the Mill", "", "", true), OFFICE);
        bench.get(SaveContact.class)
                .save(new Contact(ContactId.next(), bakery.id(), "Ida Crumb", "", "", "(555) 0177", true, 0), OFFICE);
        Customer millers = save.save(named("Miller & Daughters", "", "", true), OFFICE);
        Site plain = site(millers.id(), "Workshop");
        bench.get(SaveSite.class)
                .save(
                        new Site(
                                plain.id(),
                                millers.id(),
                                "Workshop",
                                address("99 Thistle Yard"),
                                "",
                                "",
                                false,
                                true,
                                0),
                        OFFICE);
        save.save(named("Gone Away", "", "", false), OFFICE);
        save.save(named("100% Glass_Front", "", "", true), OFFICE);
        save.save(named("Юлия Окно", "", "", true), OFFICE);
    }

    private static Customer named(String name, String email, String phone, boolean active) {
        return Records.with(
                Customer.of(CustomerId.next(), name, CustomerType.BUSINESS, address("1 Eaves Road"), 30)
                        .reached(email, phone),
                "active",
                active);
    }

    private static List<String> names(String text) {
        return bench.get(FindCustomers.class).find(text, true, null, 50).rows().stream()
                .map(CustomerLine::name)
                .toList();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "zo; Zoë Ångström",
                "ANGSTR; Zoë Ångström",
                "ång zoë; Zoë Ångström",
                "zoe@example; Zoë Ångström",
                "5550123; Zoë Ångström",
                "555-0123; Zoë Ångström",
                "crumb; Bakery at the Mill",
                "5550177; Bakery at the Mill",
                "mill bak; Bakery at the Mill",
                "thistle; Miller & Daughters",
                "99 mill; Miller & Daughters",
                "100% glass; 100% Glass_Front",
                "юл; Юлия Окно",
                "ОКНО; Юлия Окно"
            })
    void words_are_found_by_their_beginning_wherever_they_stand(String text, String name) {
        assertEquals(List.of(name), names(text));
    }

    @Test
    void nothing_matches_by_the_middle_of_a_word_or_by_wildcards_or_when_inactive() {
        assertEquals(List.of(), names("ngstr"));
        assertEquals(List.of(), names("mill zoe"));
        assertEquals(List.of(), names("gone"));
        assertEquals(
                6,
                bench.get(FindCustomers.class).find("", false, null, 50).rows().stream()
                        .filter(line -> !line.name().startsWith("Many"))
                        .count());
        assertEquals(names(""), names("%"), "signs alone ask for everybody");
        assertEquals(List.of("Bakery at the Mill", "Miller & Daughters"), names("mill"));
        assertTrue(names("'; drop table customer; --").isEmpty());
    }

    @Test
    void two_sites_saved_at_once_are_both_found() throws Exception {
        Customer customer = bench.get(SaveCustomer.class).save(named("Twin Sites", "", "", true), OFFICE);
        List<Callable<Site>> saves = new ArrayList<>();
        for (String name : List.of("Oakfield", "Elmfield", "Ashfield", "Birchfield")) {
            saves.add(() -> bench.get(SaveSite.class).save(site(customer.id(), name), OFFICE));
        }
        try (ExecutorService pool = Executors.newFixedThreadPool(4)) {
            for (Future<Site> saved : pool.invokeAll(saves)) {
                saved.get();
            }
        }
        assertEquals(List.of("Twin Sites"), names("twin oak elm ash birch"));
        assertEquals(customer, bench.get(ReadCustomer.class).customer(customer.id()), "its version stays");
        bench.execute("delete from site where customer_id = ?", customer.id().value());
        bench.execute("delete from customer where id = ?", customer.id().value());
    }

    @Test
    void pages_follow_one_another_without_loss_or_repetition() {
        SaveCustomer save = bench.get(SaveCustomer.class);
        for (int i = 0; i < 23; i++) {
            save.save(customer(i % 3 == 0 ? "Many Same" : "Many " + (char) ('Z' - i)), OFFICE);
        }
        List<CustomerLine> all = new ArrayList<>();
        @Nullable String after = null;
        int pages = 0;
        do {
            Slice<CustomerLine> page = bench.get(FindCustomers.class).find("many", true, after, 5);
            all.addAll(page.rows());
            after = page.next();
            pages++;
        } while (after != null);
        assertEquals(5, pages);
        assertEquals(
                23,
                all.stream().map(CustomerLine::id).collect(Collectors.toSet()).size());
        List<String> names = all.stream()
                .map(line -> line.name().toLowerCase(java.util.Locale.ROOT))
                .toList();
        assertEquals(names.stream().sorted().toList(), names);
        assertNull(bench.get(FindCustomers.class).find("many", true, null, 23).next());
    }

    @Test
    void bad_page_keys_and_sizes_are_refused() {
        FindCustomers find = bench.get(FindCustomers.class);
        for (String key : List.of("", "x", "0".repeat(36) + "name")) {
            assertThrows(KernelRefusal.BadPageKey.class, () -> find.find("", true, key, 5), key);
        }
        assertThrows(KernelRefusal.OutOfRange.class, () -> find.find("", true, null, 0));
        assertThrows(KernelRefusal.OutOfRange.class, () -> find.find("", true, null, 201));
        assertFalse(find.find("", true, null, 1).rows().isEmpty());
    }

    /** 20,000 customers stand in for the growth of years: rare words go by the trigram index, common ones by the order of names. */
    @Test
    void the_search_is_backed_by_the_index() {
        bench.execute("insert into customer (id, name, type, street, city, region, zip_code, country, email, phone,"
                + " payment_term_days, note, active, version, changed_by, changed_at)"
                + " select gen_random_uuid(), 'Filler ' || md5(i::text), 'HOUSEHOLD', '', '', '', '', 'US', '', '', 30,"
                + " '', true, 1, gen_random_uuid(), now() from generate_series(1, 20000) i");
        bench.execute("analyze customer");
        try {
            assertPlan(
                    "customer_by_words",
                    "select id from customer where words like '% angst%' order by sort_name, id limit 21");
            assertPlan(
                    "customer_by_name",
                    "select id from customer where words like '% filler%' and (sort_name, id) > (' f', gen_random_uuid())"
                            + " order by sort_name, id limit 21");
        } finally {
            bench.execute("delete from customer where name like 'Filler %'");
        }
    }

    private static void assertPlan(String index, String sql) {
        String plan =
                bench.rows("explain " + sql).stream().map(Object::toString).collect(Collectors.joining("\n"));
        assertTrue(plan.contains(index), plan);
    }
}
