package eaveside.ledger;

import static eaveside.ledger.LedgerFixture.credit;
import static eaveside.ledger.LedgerFixture.debit;
import static eaveside.ledger.LedgerFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.testing.Bench;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class TrialBalanceIT {
    private static final LocalDate FEBRUARY = LocalDate.of(2026, 2, 1);
    private static final LocalDate FEBRUARY_ENDS = LocalDate.of(2026, 2, 28);

    @RegisterExtension
    static final Bench bench = new Bench();

    /** 1,000 of capital and 100 of fuel in January; 40 of fuel and a refund of 15 in February; 9 of rent in March. */
    @BeforeAll
    static void three_months() {
        LedgerFixture.found(bench);
        LedgerFixture.journal(bench, LocalDate.of(2026, 1, 2), debit("1000", "1000"), credit("3000", "1000"));
        LedgerFixture.journal(bench, LocalDate.of(2026, 1, 31), debit("6100", "100"), credit("1000", "100"));
        LedgerFixture.journal(bench, FEBRUARY, debit("6100", "40"), credit("1000", "40"));
        LedgerFixture.journal(bench, FEBRUARY_ENDS, debit("1000", "15"), credit("6100", "15"));
        LedgerFixture.journal(bench, LocalDate.of(2026, 3, 1), debit("6200", "9"), credit("1000", "9"));
    }

    private static String row(TrialBalance.Row row) {
        return row.code() + " " + row.opening().amount() + " " + row.change().amount() + " "
                + row.closing().amount();
    }

    @Test
    void an_account_shows_what_it_had_what_changed_and_what_it_has() {
        TrialBalance february = bench.get(ReadLedger.class).trialBalance(FEBRUARY, FEBRUARY_ENDS);
        assertEquals(
                List.of("1000 900.00 -25.00 875.00", "3000 -1000.00 0.00 -1000.00", "6100 100.00 25.00 125.00"),
                february.accounts().stream().map(TrialBalanceIT::row).toList());
        assertEquals(new TrialBalance.Sides(usd("1000"), usd("1000")), february.openings());
        assertEquals(new TrialBalance.Sides(usd("25"), usd("25")), february.changes());
        assertEquals(new TrialBalance.Sides(usd("1000"), usd("1000")), february.closings());
        bench.verifyBooks();
    }

    @Test
    void every_figure_is_the_sum_of_the_entries_behind_it() {
        ReadLedger ledger = bench.get(ReadLedger.class);
        for (TrialBalance.Row row : ledger.trialBalance(FEBRUARY, FEBRUARY_ENDS).accounts()) {
            List<AccountRef> account = List.of(row.code());
            assertEquals(row.opening(), ledger.total(filter(account, null, FEBRUARY.minusDays(1))), row.name());
            assertEquals(row.change(), ledger.total(filter(account, FEBRUARY, FEBRUARY_ENDS)), row.name());
            assertEquals(row.closing(), ledger.total(filter(account, null, FEBRUARY_ENDS)), row.name());
        }
    }

    private static EntryFilter filter(List<AccountRef> accounts, @Nullable LocalDate from, LocalDate to) {
        return new EntryFilter(from, to, accounts, null, false, null, List.of(), null, false);
    }

    @Test
    void a_last_day_before_the_first_is_refused() {
        LedgerRefusal.BadSpan refused = assertThrows(
                LedgerRefusal.BadSpan.class, () -> bench.get(ReadLedger.class).trialBalance(FEBRUARY_ENDS, FEBRUARY));
        assertEquals(List.of("to"), refused.fields());
    }
}
