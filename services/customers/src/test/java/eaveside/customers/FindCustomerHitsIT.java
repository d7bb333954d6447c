package eaveside.customers;

import static eaveside.customers.CustomersFixture.OFFICE;
import static eaveside.customers.CustomersFixture.address;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.customers.CustomerHits.ContactHit;
import eaveside.customers.CustomerHits.SiteHit;
import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Records;
import eaveside.kernel.SiteId;
import eaveside.testing.Bench;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FindCustomerHitsIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    @BeforeAll
    static void town() {
        bench.employ(OFFICE.value());
        SaveCustomer save = bench.get(SaveCustomer.class);
        Customer larch = save.save(named("Larchwick Apartments", "(212) 555-0172", true), OFFICE);
        save.save(named("Hattie Juniperly", "555-0133", true), OFFICE);
        save.save(named("Juniper Rise Dental", "+1 212 555 0188", true), OFFICE);
        save.save(named("Zoë Ångström", "", true), OFFICE);
        save.save(named("Aunt Juniper", "", true), OFFICE);
        save.save(named("Juniper of Old", "", false), OFFICE);
        bench.get(SaveContact.class)
                .save(
                        new Contact(
                                ContactId.next(),
                                larch.id(),
                                "Dana Whitlow",
                                "",
                                "dana@larchwick.example.com",
                                "555.0199",
                                true,
                                0),
                        OFFICE);
        bench.get(SaveSite.class)
                .save(
                        new Site(
                                SiteId.next(),
                                larch.id(),
                                "Carport",
                                address("48 Thistle Yard"),
                                "",
                                "",
                                false,
                                true,
                                0),
                        OFFICE);
    }

    private static Customer named(String name, String phone, boolean active) {
        return Records.with(
                Customer.of(CustomerId.next(), name, CustomerType.BUSINESS, address("1 Eaves Road"), 30)
                        .reached("", phone),
                "active",
                active);
    }

    private static CustomerHits hits(String text) {
        return bench.get(FindCustomerHits.class).search(text, 5);
    }

    private static List<String> names(String text) {
        return hits(text).customers().stream().map(CustomerLine::name).toList();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "larch | Larchwick Apartments",
                "APART larch | Larchwick Apartments",
                "zoe ang | Zoë Ångström",
                "dana whit | Larchwick Apartments",
                "48 thistle | Larchwick Apartments"
            })
    void what_is_typed_begins_words_in_any_order(String text, String name) {
        assertEquals(List.of(name), names(text));
        assertTrue(hits(text).spelled());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "555-0172",
                "5550172",
                "(555) 0172",
                "212 555 0172",
                "+1 (212) 555-0172",
                "212.555.0172",
                "646 555 0172"
            })
    void a_phone_number_is_found_in_any_writing(String number) {
        assertEquals(List.of("Larchwick Apartments"), names(number));
    }

    @Test
    void a_contact_is_found_by_its_own_number_with_its_customer() {
        CustomerHits hits = hits("(212) 555 0199");
        assertEquals(
                List.of("Dana Whitlow"),
                hits.contacts().stream().map(ContactHit::name).toList());
        assertEquals("Larchwick Apartments", hits.contacts().getFirst().customerName());
    }

    @Test
    void a_site_is_found_by_its_address_with_its_customer() {
        CustomerHits hits = hits("thistle");
        assertEquals(
                List.of("Carport"), hits.sites().stream().map(SiteHit::name).toList());
        assertEquals("Larchwick Apartments", hits.sites().getFirst().customerName());
    }

    @Test
    void names_that_begin_so_come_first_and_inactive_ones_last() {
        assertEquals(
                List.of("Juniper Rise Dental", "Aunt Juniper", "Hattie Juniperly", "Juniper of Old"), names("juniper"));
    }

    @ParameterizedTest
    @CsvSource({
        "larchwik, Larchwick Apartments",
        "lachwick, Larchwick Apartments",
        "lrachwick, Larchwick Apartments",
        "hatie, Hattie Juniperly",
        "angstrom zoey, Zoë Ångström",
        "apartmants, Larchwick Apartments"
    })
    void a_slip_still_finds_it_and_says_so(String typed, String name) {
        assertEquals(name, names(typed).getFirst());
        assertFalse(hits(typed).spelled());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "  ", "%", "_", "' or 1=1 --", "qxzvk", "xy", "(((", "+-./ ()"})
    void nothing_like_it_finds_nothing(String text) {
        assertTrue(hits(text).isEmpty());
    }

    @Test
    void a_text_that_is_too_long_is_refused() {
        assertThrows(KernelRefusal.class, () -> hits("a".repeat(201)));
        assertThrows(
                KernelRefusal.OutOfRange.class,
                () -> bench.get(FindCustomerHits.class).search("a", 51));
    }
}
