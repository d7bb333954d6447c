package eaveside.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.testing.Bench;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class DemoCompanyIT {
    /** A Wednesday afternoon in the town. */
    private static final Instant PRESENT = Instant.parse("2026-11-25T21:30:00Z");

    @RegisterExtension
    static final Bench bench = new Bench();

    @Test
    void the_history_is_made_by_the_use_cases_and_its_books_are_true() {
        isWholeAndTrue(bench, PRESENT);
    }

    /** Whatever day it is made on. */
    static void isWholeAndTrue(Bench bench, Instant present) {
        DemoTime time = DemoDatabase.timeOf(bench);
        time.moveTo(present);

        List<DemoUser> usernames = bench.get(LoadDemoCompany.class).load(time);

        assertEquals(7, usernames.size());
        assertEquals(present, bench.clock().instant(), "the clock is back in the present");
        bench.verifyBooks();
        new DemoCompanyIT.Shown(bench).everyScreenHasSomethingToShow();
    }

    private record Shown(Bench bench) {
        void everyScreenHasSomethingToShow() {
            atLeast(60, "from customer");
            for (String own : List.of("name", "email")) {
                assertEquals(
                        count("from customer where email <> ''"),
                        count("from (select distinct " + own + " from customer where email <> '') own"),
                        own);
            }
            // The history begins on the first of a month, so its length goes by the day that it is made on.
            long days = ((Number) bench.value("select " + today() + " - min(posting_date) from document")).longValue();
            atLeast(days * 6 / 5, "from visit where status in ('COMPLETED', 'BILLED')");
            atLeast(3, "from visit where status = 'SCHEDULED' and scheduled_for = " + today());
            atLeast(3, "from visit where status = 'SCHEDULED' and scheduled_for > " + today());
            atLeast(1, "from visit where status = 'SCHEDULED' and scheduled_for < " + today());
            atLeast(4, "from visit where status = 'COMPLETED'");
            atLeast(1, "from visit where status = 'CLOSED_NOT_BILLED'");
            atLeast(1, "from visit where status = 'CANCELED'");
            for (String status : List.of("DRAFT", "SENT", "ACCEPTED", "DECLINED")) {
                atLeast(1, "from quote where status = '" + status + "'");
            }
            for (String decision : List.of("OPEN", "BILL", "NO_CHARGE", "ASK", "RETURN_VISIT", "CANCEL")) {
                atLeast(1, "from scope_change where decision = '" + decision + "'");
            }
            atLeast(5, "from finding where closed_at is null and withdrawn_at is null");
            atLeast(5, "from finding where closed_at is not null");
            atLeast(10, "from photo");
            atLeast(1, "from money_entry where account_code = '4000' and finding_id is not null");
            atLeast(5, "from invoice where open > 0 and due_date < " + today());
            atLeast(2, "from invoice where credit_memo_id is not null");
            atLeast(1, "from invoice_draft");
            atLeast(1, "from sent_sheet");
            atLeast(100, "from payment");
            for (String type :
                    List.of("RECEIPT", "TRANSFER", "COUNT", "WRITE_OFF", "CREDIT_APPLICATION", "REVERSAL", "EXPENSE")) {
                atLeast(1, "from document where type = '" + type + "'");
            }
            assertEquals(2L, count("from period where closed_at is not null"));
            assertEquals(2L, count("from price_book where number is not null"));
            assertEquals(1L, count("from price_book where number is null"));
            assertEquals(2L, count("from cost_rates"));
            assertEquals(
                    4L,
                    count(
                            "from surface s join site t on t.id = s.site_id where t.name = 'Home' and t.street = '14 Tern Lane'"
                                    + " and (s.type, s.extent) in (('ARRAY', 48), ('SKYLIGHT', 6), ('WINDOW', 22), ('ROOF', 1900))"));
        }

        private String today() {
            return "date '"
                    + bench.clock().instant().atZone(ZoneId.of(Employment.ZONE)).toLocalDate() + "'";
        }

        private void atLeast(long least, String from) {
            long counted = count(from);
            assertTrue(counted >= least, () -> counted + " rows " + from + ", at least " + least + " expected");
        }

        private long count(String from) {
            return (long) bench.value("select count(*) " + from);
        }
    }
}
