package eaveside.customers;

import static eaveside.customers.CustomersFixture.OFFICE;
import static eaveside.customers.CustomersFixture.address;
import static eaveside.customers.CustomersFixture.customer;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.customers.Duplicate.Because;
import eaveside.kernel.CustomerId;
import eaveside.kernel.KernelRefusal;
import eaveside.testing.Bench;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DuplicatesIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    @BeforeAll
    static void employ() {
        bench.employ(OFFICE.value());
    }

    private static Customer known(String name, String street, String phone, String email) {
        return Customer.of(CustomerId.next(), name, CustomerType.HOUSEHOLD, address(street), 30)
                .reached(email, phone);
    }

    private static Customer saved(Customer customer) {
        return bench.get(SaveCustomer.class).save(customer, OFFICE);
    }

    private static List<Duplicate> refused(Customer customer) {
        CustomersRefusal.PossibleDuplicate refusal = assertThrows(
                CustomersRefusal.PossibleDuplicate.class,
                () -> bench.get(SaveCustomer.class).saveUnlessKnown(customer, OFFICE));
        assertEquals(409, refusal.type().status());
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> bench.get(ReadCustomer.class).customer(customer.id()));
        return refusal.duplicates();
    }

    @ParameterizedTest
    @CsvSource({
        "(312) 555-0141, +1 312 555 0141",
        "312.555.0142, 312-555-0142 ext. 7",
        "555-0143, 5550143",
        "+44 20 7946 0144, 020 7946 0144"
    })
    void a_phone_is_the_same_however_it_is_written(String one, String other) {
        Customer first = saved(known("Phone " + one, "", one, ""));
        assertEquals(
                List.of(new Duplicate(first.id(), first.name(), Set.of(Because.PHONE))),
                refused(known("Phone " + other, "", other, "")));
    }

    @Test
    void an_email_and_a_name_with_its_address_are_the_same_whatever_the_capitals() {
        Customer mail = saved(known("Mail Known", "", "", "Flora.Gutter@example.com"));
        Customer location = saved(known("Renée Parapet", "12, Sill Lane", "", ""));
        assertEquals(
                List.of(
                        new Duplicate(mail.id(), mail.name(), Set.of(Because.EMAIL)),
                        new Duplicate(location.id(), location.name(), Set.of(Because.NAME_AND_ADDRESS))),
                refused(known("RENEE PARAPET", "12 Sill lane", "", "flora.gutter@example.com")));
        // The same name elsewhere, and the same house of another, are no duplicates.
        bench.get(SaveCustomer.class).saveUnlessKnown(known("Renée Parapet", "13 Sill Lane", "", ""), OFFICE);
        bench.get(SaveCustomer.class).saveUnlessKnown(known("Ada Parapet", "12 Sill Lane", "", ""), OFFICE);
        bench.get(SaveCustomer.class).saveUnlessKnown(known("Renée Parapet", "", "", ""), OFFICE);
    }

    @Test
    void one_that_is_known_can_be_saved_all_the_same_and_sent_again() {
        saved(known("First of two", "", "555-0171", ""));
        Customer second = known("Second of two", "", "555-0171", "");
        refused(second);
        Customer stored = saved(second);
        assertEquals(
                stored,
                bench.get(SaveCustomer.class).saveUnlessKnown(second, OFFICE),
                "what is stored already is a retry, not a duplicate of the first");
        Customer edited = Customer.of(stored.id(), "Second, edited", stored.type(), stored.address(), 30)
                .reached("", "555-0171")
                .withVersion(1);
        assertEquals(
                2, bench.get(SaveCustomer.class).saveUnlessKnown(edited, OFFICE).version());
        assertEquals(
                List.of("First of two"),
                bench.get(FindDuplicates.class).of(stored.id()).stream()
                        .map(Duplicate::name)
                        .toList());
    }

    @Test
    void nothing_known_is_no_likeness() {
        saved(customer("Empty One"));
        saved(known("Empty Two", "", "", ""));
        saved(known("Short", "", "12", ""));
        bench.get(SaveCustomer.class).saveUnlessKnown(known("Empty Three", "", "", ""), OFFICE);
        bench.get(SaveCustomer.class).saveUnlessKnown(known("Shorter", "", "12", ""), OFFICE);
        assertTrue(bench.get(FindDuplicates.class)
                .of(saved(known("Empty Four", "", "", "")).id())
                .isEmpty());
    }
}
