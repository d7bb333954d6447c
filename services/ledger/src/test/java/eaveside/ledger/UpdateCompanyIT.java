package eaveside.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.testing.Bench;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class UpdateCompanyIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    @BeforeAll
    static void found() {
        LedgerFixture.found(bench);
    }

    private static UpdateCompany use() {
        return bench.get(UpdateCompany.class);
    }

    private static Company called(String name, Company like) {
        return with(name, like.currency(), like.booksFrom(), like);
    }

    private static Company with(String name, String currency, LocalDate from, Company like) {
        return new Company(
                name,
                like.address(),
                like.email(),
                like.phone(),
                like.taxNumber(),
                currency,
                like.zone(),
                like.measures(),
                from);
    }

    @Test
    void a_change_is_stored_once() {
        UpdateCompany.Versioned before = use().current();
        Company wanted = called("Gutterby Glass and Roof", before.company());

        UpdateCompany.Versioned after = use().update(wanted, before.version());

        assertEquals(wanted, after.company());
        assertEquals(after, use().update(wanted, before.version()), "the same again is a retry");
        assertEquals(after, use().current());
        assertTrue(after.version() > before.version());
    }

    @Test
    void the_slower_of_two_learns_what_the_other_saved() {
        UpdateCompany.Versioned both = use().current();
        UpdateCompany.Versioned first = use().update(called("First Name", both.company()), both.version());

        var refusal = assertThrows(
                LedgerRefusal.CompanyChangedMeanwhile.class,
                () -> use().update(called("Second Name", both.company()), both.version()));

        assertEquals(first, refusal.stored());
        assertEquals("First Name", bench.value("select name from company"));
    }

    @Test
    void currency_and_first_month_stay() {
        UpdateCompany.Versioned now = use().current();
        Company like = now.company();
        Company euros = with(like.name(), "EUR", like.booksFrom(), like);
        Company later = with(like.name(), like.currency(), like.booksFrom().plusMonths(1), like);

        assertEquals(
                List.of("currency"),
                assertThrows(LedgerRefusal.Unchangeable.class, () -> use().update(euros, now.version()))
                        .fields());
        assertEquals(
                List.of("booksFrom"),
                assertThrows(LedgerRefusal.Unchangeable.class, () -> use().update(later, now.version()))
                        .fields());
        assertEquals(now, use().current());
    }
}
