package eaveside.ledger;

import static eaveside.ledger.LedgerFixture.OWNER;
import static eaveside.ledger.LedgerFixture.credit;
import static eaveside.ledger.LedgerFixture.debit;
import static eaveside.ledger.LedgerFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.DocumentId;
import eaveside.testing.Bench;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class ClosePeriodIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static PostJournal.Journal fuel(LocalDate date, String amount) {
        return new PostJournal.Journal(
                DocumentId.next(),
                PostJournal.Type.EXPENSE,
                date,
                "Fuel",
                List.of(debit("6100", amount), credit("1000", amount)),
                OWNER);
    }

    private static ReadVariances.Variance variance(YearMonth month, String name) {
        return bench.get(ReadVariances.class).between(month.atDay(1), month.atEndOfMonth()).stream()
                .filter(v -> v.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_close_empties_no_account_and_nothing_posts_past_it() {
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
        Posted closed = close.close(new ClosePeriod.Close(DocumentId.next(), YearMonth.of(2026, 1), OWNER));
        var january = bench.get(ReadLedger.class).trialBalance(LocalDate.of(2026, 1, 1), LocalDate.of(2026, 1, 31));
        assertEquals(
                List.of(usd("120.00")),
                january.accounts().stream()
                        .filter(row -> row.account().value().equals("6100"))
                        .map(TrialBalance.Row::change)
                        .toList(),
                "what was spent on vehicles stays readable");
        assertTrue(january.accounts().stream()
                .noneMatch(row -> row.account().value().equals("6190")));
        assertEquals(
                List.of(), bench.get(ReadLedger.class).document(closed.id()).entries());
        ReadVariances.Variance travel = variance(YearMonth.of(2026, 1), "Travel variance");
        assertEquals(usd("120.00"), travel.actual());
        assertEquals(usd("0"), travel.applied());
        assertEquals(usd("120.00"), travel.variance());
        assertEquals(
                List.of(Map.of("actual", "120.000", "applied", "0.000")),
                bench.rows("select actual::text, applied::text from period_variance"
                        + " where first_day = '2026-01-01' and account_code = '6190'"),
                "kept with the month");
        Posted late = post.post(fuel(LocalDate.of(2026, 1, 21), "8.00"));
        assertTrue(!late.postingDate().isBefore(LocalDate.of(2026, 2, 1)), "a late document posts on an open day");
        assertEquals(
                LocalDate.of(2026, 1, 21),
                bench.get(ReadLedger.class).document(late.id()).serviceDate());
        bench.verifyBooks();
    }
}
