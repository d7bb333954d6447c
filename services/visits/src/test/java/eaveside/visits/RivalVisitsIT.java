package eaveside.visits;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.kernel.QuoteId;
import eaveside.kernel.VisitId;
import eaveside.testing.Bench;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Bookings and sheets that arrive at the same moment. */
class RivalVisitsIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    static VisitsFixture company;

    @BeforeAll
    static void found() {
        company = new VisitsFixture(bench);
    }

    private static List<String> signOffTogether(List<JobSheet> sheets) throws Exception {
        return together(sheets.stream()
                .<Callable<String>>map(sheet -> () -> "posted "
                        + bench.get(SignOffVisit.class).signOff(sheet).posted().number())
                .toList());
    }

    /** What each answers when all start at once; "refused" where the visit or quote was taken already. */
    private static List<String> together(List<Callable<String>> works) throws Exception {
        CyclicBarrier start = new CyclicBarrier(works.size());
        try (ExecutorService pool = Executors.newFixedThreadPool(works.size())) {
            List<Callable<String>> tasks = new ArrayList<>();
            for (Callable<String> work : works) {
                tasks.add(() -> {
                    start.await();
                    try {
                        return work.call();
                    } catch (VisitRefusal.WrongStatus | VisitRefusal.QuoteAlreadyScheduled refused) {
                        return "refused";
                    }
                });
            }
            List<String> results = new ArrayList<>();
            for (Future<String> result : pool.invokeAll(tasks)) {
                results.add(result.get());
            }
            return results;
        }
    }

    @Test
    void of_two_schedules_of_one_quote_exactly_one_stands_and_a_doubled_one_answers_alike() throws Exception {
        QuoteId quote = company.quote(true).id();
        List<Callable<String>> rivals = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            Scheduling scheduling = from(quote);
            rivals.add(() ->
                    bench.get(ScheduleVisit.class).schedule(scheduling).id().toString());
        }
        List<String> results = together(rivals);
        assertEquals(1, results.stream().filter("refused"::equals).count(), results.toString());

        Scheduling doubled = from(company.quote(true).id());
        Callable<String> book =
                () -> bench.get(ScheduleVisit.class).schedule(doubled).id().toString();
        List<String> alike = together(List.of(book, book));
        assertEquals(List.of(doubled.id().toString(), doubled.id().toString()), alike);
    }

    private static Scheduling from(QuoteId quote) {
        return Scheduling.fromQuote(
                VisitId.next(), quote, VisitsFixture.TODAY, List.of(company.technician), "", company.office);
    }

    @Test
    void of_two_sheets_of_one_visit_exactly_one_posts() throws Exception {
        for (int round = 0; round < 5; round++) {
            Visit visit = company.scheduled();
            List<String> results = signOffTogether(List.of(
                    company.sheet(visit).mixed("1", null).build(),
                    company.sheet(visit).mixed("2", null).build()));
            assertEquals(1, results.stream().filter("refused"::equals).count(), results.toString());
            assertEquals(
                    1L,
                    bench.value(
                            "select count(*) from job_sheet where visit_id = ?",
                            visit.id().value()));
        }
        bench.verifyBooks();
    }

    @Test
    void the_same_sheet_sent_twice_at_once_posts_once_and_answers_both_alike() throws Exception {
        for (int round = 0; round < 5; round++) {
            JobSheet sheet = company.sheet(company.scheduled()).mixed("1", null).build();
            List<String> results = signOffTogether(List.of(sheet, sheet));
            assertEquals(results.getFirst(), results.getLast());
            assertEquals(
                    1L,
                    bench.value(
                            "select count(*) from document where id = ?",
                            sheet.id().value()));
        }
        bench.verifyBooks();
    }

    /** Different visits that draw on one van and correct the same surfaces wait for one another and all post. */
    @Test
    void sheets_of_many_visits_from_one_van_all_post() throws Exception {
        List<JobSheet> sheets = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            sheets.add(company.sheet(company.scheduled())
                    .mixed("1", null)
                    .water("200", "5", "8")
                    .brushed(40, null)
                    .fact(new JobSheet.SurfaceFact.Recounted(company.skylights, VisitsFixture.pieces(7 + i)))
                    .fact(new JobSheet.SurfaceFact.Recounted(company.array, VisitsFixture.pieces(40 + i)))
                    .build());
        }
        List<String> results = signOffTogether(sheets);
        assertEquals(
                6,
                results.stream().distinct().filter(r -> r.startsWith("posted")).count(),
                results.toString());
        bench.verifyBooks();
    }
}
