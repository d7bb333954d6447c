package eaveside.ledger;

import static eaveside.ledger.LedgerFixture.OWNER;
import static eaveside.ledger.LedgerFixture.credit;
import static eaveside.ledger.LedgerFixture.debit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.DocumentId;
import eaveside.testing.Bench;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class ClosePeriodIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static PostJournal.Journal fuel(LocalDate date, String amount) {
        return new PostJournal.Journal(
                DocumentId.next(), true, date, "Fuel", List.of(debit("6100", amount), credit("1000", amount)), OWNER);
    }

    @Test
    void a_close_moves_differences_and_nothing_posts_past_it() {
        LedgerFixture.found(bench);
        PostJournal post = bench.get(PostJournal.class);
        post.post(fuel(LocalDate.of(2026, 1, 20), "120.00"));
        ClosePeriod close = bench.get(ClosePeriod.class);
        assertThrows(
                LedgerRefusal.PeriodNotClosable.class,
                () -> close.close(new ClosePeriod.Close(DocumentId.next(), YearMonth.of(2026, 2), OWNER)));
        assertThrows(
                LedgerRefusal.PeriodNotClosable.class,
                () -> close.close(new ClosePeriod.Close(DocumentId.next(), YearMonth.of(2026, 3), OWNER)));
        close.close(new ClosePeriod.Close(DocumentId.next(), YearMonth.of(2026, 1), OWNER));
        var january = bench.get(ReadLedger.class).trialBalance(LocalDate.of(2026, 1, 1), LocalDate.of(2026, 1, 31));
        assertTrue(january.stream()
                .filter(b -> b.code().value().equals("6100"))
                .allMatch(b -> b.amount().isZero()));
        assertTrue(january.stream()
                .anyMatch(b -> b.code().value().equals("6190") && b.amount().isPositive()));
        Posted late = post.post(fuel(LocalDate.of(2026, 1, 21), "8.00"));
        assertTrue(!late.postingDate().isBefore(LocalDate.of(2026, 2, 1)), "a late document posts on an open day");
        assertEquals(
                LocalDate.of(2026, 1, 21),
                bench.get(ReadLedger.class).document(late.id()).serviceDate());
        bench.verifyBooks();
    }
}
