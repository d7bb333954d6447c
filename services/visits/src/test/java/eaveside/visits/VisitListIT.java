package eaveside.visits;

import static eaveside.visits.VisitsFixture.TODAY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.CustomerId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Slice;
import eaveside.kernel.VisitId;
import eaveside.testing.Bench;
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
                .cancel(new Cancellation(off.id(), off.version(), "Sold", company.office))
                .id();
        Visit done = company.scheduled();
        bench.get(SignOffVisit.class).signOff(company.sheet(done).build());
        completed = done.id();
    }

    private static VisitId scheduled(LocalDate day) {
        Visit visit = company.scheduled();
        return bench.get(RescheduleVisit.class)
                .reschedule(new Rescheduling(
                        visit.id(), visit.version(), day, List.of(company.other), "Rain", company.office))
                .id();
    }

    private static List<VisitId> list(VisitsShown show, String search) {
        return all(new VisitQuery(show, null, search), 50);
    }

    /** Every page after another. */
    private static List<VisitId> all(VisitQuery query, int size) {
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
        assertEquals(List.of(overdue, today, later), list(VisitsShown.SCHEDULED, ""));
        assertEquals(List.of(today, completed), list(VisitsShown.TODAY, ""));
        assertEquals(List.of(completed), list(VisitsShown.COMPLETED, ""));
        assertEquals(List.of(later, completed, canceled, today, overdue), list(VisitsShown.ALL, ""));
    }

    @Test
    void words_are_those_of_customer_site_address_and_crew() {
        assertEquals(List.of(overdue, today, later), list(VisitsShown.SCHEDULED, "quill"));
        assertEquals(List.of(overdue, today, later), list(VisitsShown.SCHEDULED, "HARR gable"));
        assertEquals(List.of(today), list(VisitsShown.SCHEDULED, "home larch"), "Tess Larch is in the crew");
        assertEquals(
                List.of(overdue, later), list(VisitsShown.SCHEDULED, "théo quill"), "Theo Rowan; accents do not count");
        assertEquals(List.of(), list(VisitsShown.SCHEDULED, "quill nowhere"));
        assertEquals(List.of(), list(VisitsShown.ALL, "uill"), "a word is looked up by its beginning");
        assertEquals(3, list(VisitsShown.SCHEDULED, "%").size(), "no word at all");
    }

    @Test
    void a_search_pages_by_key_without_loss() {
        for (VisitsShown show : VisitsShown.values()) {
            assertEquals(list(show, "quill"), all(new VisitQuery(show, null, "quill"), 1), show.name());
        }
        assertThrows(
                KernelRefusal.BadPageKey.class,
                () -> bench.get(ReadVisits.class).list(new VisitQuery(VisitsShown.ALL, null, "quill"), "soon", 5));
    }

    @Test
    void a_customers_list_has_nobody_elses_visits() {
        assertEquals(
                VisitsShown.ALL, VisitQuery.asked(null, company.customer, "").show());
        assertEquals(VisitsShown.SCHEDULED, VisitQuery.asked(null, null, "").show());
        assertEquals(5, all(VisitQuery.asked(null, company.customer, ""), 2).size());
        assertEquals(List.of(completed), all(VisitQuery.asked(VisitsShown.COMPLETED, company.customer, ""), 2));
        assertEquals(List.of(), all(VisitQuery.asked(null, CustomerId.next(), ""), 2));
    }
}
