package eaveside.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Records;
import eaveside.kernel.Refusal;
import eaveside.testing.Bench;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class FoundCompanyIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    /** The first month never changes, and every day that is entered later is measured by it. */
    @Test
    void books_that_begin_in_another_age_are_a_slip() {
        FoundCompany found = bench.get(FoundCompany.class);
        Company company = LedgerFixture.company("USD");
        for (int year : List.of(1926, 2126)) {
            Company slip = Records.with(company, "booksFrom", LocalDate.of(year, 1, 1));
            Refusal refused = assertThrows(KernelRefusal.class, () -> found.found(slip));
            assertEquals(List.of("booksFrom"), refused.fields());
        }
        assertEquals(0L, bench.value("select count(*) from company"));
        found.found(company);
        found.found(company);
        Company another = Records.with(company, "name", "Another");
        assertThrows(LedgerRefusal.AlreadyFounded.class, () -> found.found(another));
    }
}
