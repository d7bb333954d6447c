package eaveside.demo;

import eaveside.testing.Bench;
import java.time.Instant;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The demo company is whole and its books are true on days that calendars stumble over, each in a database of its own. */
@Tag("long")
class DemoOnOtherDaysIT {
    @Nested
    class TheLastOfAMonthOnASunday {
        @RegisterExtension
        static final Bench bench = new Bench();

        @Test
        void isWholeAndTrue() {
            DemoCompanyIT.isWholeAndTrue(bench, Instant.parse("2027-01-31T21:30:00Z"));
        }
    }

    @Nested
    class TheSecondOfJanuaryOnASaturday {
        @RegisterExtension
        static final Bench bench = new Bench();

        @Test
        void isWholeAndTrue() {
            DemoCompanyIT.isWholeAndTrue(bench, Instant.parse("2027-01-02T21:30:00Z"));
        }
    }

    @Nested
    class ALeapDay {
        @RegisterExtension
        static final Bench bench = new Bench();

        @Test
        void isWholeAndTrue() {
            DemoCompanyIT.isWholeAndTrue(bench, Instant.parse("2028-02-29T21:30:00Z"));
        }
    }
}
