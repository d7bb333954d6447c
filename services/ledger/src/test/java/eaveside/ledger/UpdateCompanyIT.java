package eaveside.ledger;

import static eaveside.ledger.LedgerFixture.OWNER;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Records;
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
        return Records.with(like, "name", name);
    }

    @Test
    void a_change_is_stored_once() {
        Company before = use().current();
        Company wanted = called("Gutterby Glass and Roof", before);

        Company after = use().update(wanted, OWNER);

        assertTrue(wanted.saysTheSameAs(after));
        assertEquals(after, use().update(wanted, OWNER), "the same again is a retry");
        assertEquals(after, use().current());
        assertEquals(before.version() + 1, after.version());
        assertEquals(
                1L,
                bench.value(
                        "select count(*) from audit_event where action = 'company.save' and subject = ?",
                        after.name()));
    }

    /** 14 hours ahead it is the next day already; a document of that day could not be followed by one of today. */
    @Test
    void a_time_zone_in_which_the_last_document_is_yet_to_come_is_refused() {
        Company before = use().current();
        bench.clock().to(LocalDate.of(2026, 4, 9));
        use().update(Records.with(use().current(), "zone", "Etc/GMT-14"), OWNER);
        LedgerFixture.journal(
                bench, LocalDate.of(2026, 4, 10), LedgerFixture.debit("1000", "1"), LedgerFixture.credit("2000", "1"));
        Company back = Records.with(use().current(), "zone", before.zone());

        var refusal = assertThrows(KernelRefusal.Unfit.class, () -> use().update(back, OWNER));

        assertEquals(List.of("zone"), refusal.fields());
        assertTrue(refusal.said().contains("2026-04-10"), refusal.said());
        bench.clock().to(LocalDate.of(2026, 4, 11));
        assertEquals(before.zone(), use().update(back, OWNER).zone());
    }

    @Test
    void the_slower_of_two_learns_what_the_other_saved() {
        Company both = use().current();
        Company first = use().update(called("First Name", both), OWNER);

        var refusal = assertThrows(KernelRefusal.Stale.class, () -> use().update(called("Second Name", both), OWNER));

        assertEquals(first, refusal.theirs());
        assertEquals("First Name", bench.value("select name from company"));
    }

    @Test
    void currency_and_first_month_stay() {
        Company now = use().current();
        Company euros = Records.with(now, "currency", "EUR");
        Company later = Records.with(now, "booksFrom", now.booksFrom().plusMonths(1));

        assertEquals(
                List.of("currency"),
                assertThrows(LedgerRefusal.Unchangeable.class, () -> use().update(euros, OWNER))
                        .fields());
        assertEquals(
                List.of("booksFrom"),
                assertThrows(LedgerRefusal.Unchangeable.class, () -> use().update(later, OWNER))
                        .fields());
        assertEquals(now, use().current());
    }
}
