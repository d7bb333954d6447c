package eaveside.visits;

import static eaveside.visits.VisitsFixture.TODAY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.CustomerId;
import eaveside.kernel.Slice;
import eaveside.kernel.VisitId;
import eaveside.testing.Bench;
import eaveside.visits.ReadVisits.Query;
import eaveside.visits.ReadVisits.Show;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Lists of visits: narrowed, searched and paged by the database. */
class VisitListIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    static VisitsFixture company;
    static VisitId today;
    static VisitId overdue;
    static VisitId later;
    static VisitId canceled;
    static VisitId completed;

    @BeforeAll
    static void found() {
        company = new VisitsFixture(bench);
        today = company.scheduled().id();
        overdue = scheduled(TODAY.minusDays(3));
        later = scheduled(TODAY.plusDays(5));
        Visit off = company.scheduled();
        canceled = bench.get(CancelVisit.class)
                .cancel(new CancelVisit.Cancellation(off.id(), off.version(), "Sold", company.office))
                .id();
        Visit done = company.scheduled();
        bench.get(SignOffVisit.class).signOff(company.sheet(done).build());
        completed = done.id();
    }

    private static VisitId scheduled(LocalDate day) {
        Visit visit = company.scheduled();
        return bench.get(RescheduleVisit.class)
                .reschedule(new RescheduleVisit.Rescheduling(
                        visit.id(), visit.version(), day, List.of(company.other), "Rain", company.office))
                .id();
    }

    private static List<VisitId> list(Show show, String search) {
        return all(new Query(show, null, search), 50);
    }

    /** Every page after another. */
    private static List<VisitId> all(Query query, int size) {
        List<VisitId> ids = new ArrayList<>();
        String after = null;
        do {
            Slice<Visit.Summary> page = bench.get(ReadVisits.class).list(query, after, size);
            assertTrue(page.rows().size() <= size);
            page.rows().forEach(row -> ids.add(row.id()));
            after = page.next();
        } while (after != null);
        return ids;
    }

    @Test
    void each_list_has_its_visits_in_its_order() {
        assertEquals(List.of(overdue, today, later), list(Show.SCHEDULED, ""));
        assertEquals(List.of(today, completed), list(Show.TODAY, ""));
        assertEquals(List.of(completed), list(Show.COMPLETED, ""));
        assertEquals(List.of(later, completed, canceled, today, overdue), list(Show.ALL, ""));
    }

    @Test
    void words_are_those_of_customer_site_address_and_crew() {
        assertEquals(List.of(overdue, today, later), list(Show.SCHEDULED, "quill"));
        assertEquals(List.of(overdue, today, later), list(Show.SCHEDULED, "HARR gable"));
        assertEquals(List.of(today), list(Show.SCHEDULED, "home larch"), "Tess Larch is in the crew");
        assertEquals(List.of(overdue, later), list(Show.SCHEDULED, "théo quill"), "Theo Rowan; accents do not count");
        assertEquals(List.of(), list(Show.SCHEDULED, "quill nowhere"));
        assertEquals(List.of(), list(Show.ALL, "uill"), "a word is looked up by its beginning");
        assertEquals(3, list(Show.SCHEDULED, "%").size(), "no word at all");
    }

    @Test
    void a_search_pages_by_key_without_loss() {
        for (Show show : Show.values()) {
            assertEquals(list(show, "quill"), all(new Query(show, null, "quill"), 1), show.name());
        }
        assertThrows(
                VisitRefusal.BadPageKey.class,
                () -> bench.get(ReadVisits.class).list(new Query(Show.ALL, null, "quill"), "soon", 5));
    }

    @Test
    void a_customers_list_has_nobody_elses_visits() {
        assertEquals(Show.ALL, Query.asked(null, company.customer, "").show());
        assertEquals(Show.SCHEDULED, Query.asked(null, null, "").show());
        assertEquals(5, all(Query.asked(null, company.customer, ""), 2).size());
        assertEquals(List.of(completed), all(Query.asked(Show.COMPLETED, company.customer, ""), 2));
        assertEquals(List.of(), all(Query.asked(null, CustomerId.next(), ""), 2));
    }
}
