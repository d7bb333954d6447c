package eaveside.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.testing.Bench;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** One seed and one day give one history: a month of it is made twice, each time in a database of its own. */
class DemoSeedIT {
    /** The first of a month, on a Sunday. */
    private static final Instant PRESENT = Instant.parse("2026-11-01T17:00:00Z");

    private static List<Map<String, Object>> firstHistory = List.of();

    @Nested
    class Once {
        @RegisterExtension
        static final Bench bench = new Bench();

        @Test
        void isLikeTheOther() {
            compare(history(bench));
        }
    }

    @Nested
    class OnceMore {
        @RegisterExtension
        static final Bench bench = new Bench();

        @Test
        void isLikeTheOther() {
            compare(history(bench));
        }
    }

    /** Whichever comes second compares. */
    private static void compare(List<Map<String, Object>> history) {
        assertTrue(history.size() > 100, () -> history.size() + " documents");
        if (firstHistory.isEmpty()) {
            firstHistory = history;
        } else {
            assertEquals(firstHistory, history);
        }
    }

    private static List<Map<String, Object>> history(Bench bench) {
        DemoTime time = DemoDatabase.timeOf(bench);
        time.moveTo(PRESENT);
        bench.get(LoadDemoCompany.class).load(time, 1);
        bench.verifyBooks();
        return bench.rows("""
                select d.type, d.number, d.posting_date, d.summary, d.posted_at,
                       coalesce(sum(e.amount) filter (where e.amount > 0), 0) as debits,
                       (select count(*) from stock_entry s where s.document_id = d.id) as movements
                from document d left join money_entry e on e.document_id = d.id
                group by d.id
                order by d.type, d.number""");
    }
}
