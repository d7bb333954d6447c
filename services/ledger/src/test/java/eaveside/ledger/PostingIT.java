package eaveside.ledger;

import static eaveside.ledger.LedgerFixture.OWNER;
import static eaveside.ledger.LedgerFixture.credit;
import static eaveside.ledger.LedgerFixture.debit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.UserId;
import eaveside.testing.Bench;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** What is the same for every document, whichever module decides it. */
class PostingIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private record Fuel(DocumentId id, @Nullable LocalDate date, String liters, UserId by) implements Postable {}

    private final List<String> steps = new ArrayList<>();

    @BeforeAll
    static void found() {
        LedgerFixture.found(bench);
    }

    @AfterEach
    void verify() {
        bench.verifyBooks();
    }

    private static LocalDate today() {
        return bench.inTransaction(() -> bench.get(Books.class).today());
    }

    private Lock lock(Lock.Rank rank) {
        return Lock.of(rank, () -> steps.add(rank.name()));
    }

    private Posted post(Fuel fuel, Lock... locks) {
        return bench.inTransaction(() -> bench.get(Posting.class).post("fuel.post", fuel, List.of(locks), day -> {
            steps.add("decide on " + day.date());
            return Decided.document(
                            DocumentType.EXPENSE,
                            "Fuel",
                            List.of(
                                    debit("6100", fuel.liters()).entry(),
                                    credit("1000", fuel.liters()).entry()))
                    .restingOn("the tank", LocalDate.of(2026, 1, 2))
                    .then(posted -> steps.add("then"));
        }));
    }

    private static long lines(DocumentId document) {
        return (long) bench.value(
                "select count(*) from audit_event where action = 'fuel.post' and subject = ?", document.toString());
    }

    private static long documents() {
        return (long) bench.value("select count(*) from document");
    }

    @Test
    void locks_are_taken_in_one_order_before_anything_is_decided() {
        LocalDate day = today();
        post(
                new Fuel(DocumentId.next(), day, "1", OWNER),
                lock(Lock.Rank.LOCATION),
                lock(Lock.Rank.RECORD),
                lock(Lock.Rank.CUSTOMER));
        assertEquals(List.of("RECORD", "CUSTOMER", "LOCATION", "decide on " + day, "then"), steps);
    }

    @Test
    void the_same_again_is_answered_as_before_also_after_midnight() {
        Fuel fuel = new Fuel(DocumentId.next(), null, "2", OWNER);
        Posted first = post(fuel);
        long documents = documents();
        bench.clock().forward(Duration.ofDays(1));
        assertEquals(first, post(fuel, lock(Lock.Rank.RECORD)));
        assertEquals(2, steps.size(), "neither locks nor a decision for a retry: " + steps);
        assertEquals(documents, documents());
        assertEquals(1, lines(fuel.document()));
        assertThrows(
                KernelRefusal.IdTaken.class,
                () -> post(new Fuel(fuel.document(), null, "3", OWNER)),
                "other content under the id");
    }

    @Test
    void of_the_same_sent_many_times_at_once_one_is_posted_and_all_get_its_answer() throws Exception {
        Fuel fuel = new Fuel(DocumentId.next(), null, "4", OWNER);
        int senders = 6;
        CyclicBarrier together = new CyclicBarrier(senders);
        try (var threads = Executors.newFixedThreadPool(senders)) {
            Callable<Posted> send = () -> {
                together.await();
                return post(fuel);
            };
            List<Posted> answers = new ArrayList<>();
            for (Future<Posted> answer : threads.invokeAll(java.util.Collections.nCopies(senders, send))) {
                answers.add(answer.get());
            }
            assertEquals(1, answers.stream().distinct().count(), answers.toString());
        }
        assertEquals(1, lines(fuel.document()));
    }

    @Test
    void what_cannot_be_told_to_the_audit_log_does_not_come_about() {
        bench.execute("alter table audit_event add constraint full_up check (action <> 'fuel.post') not valid");
        Fuel fuel = new Fuel(DocumentId.next(), null, "5", OWNER);
        long documents = documents();
        try {
            assertThrows(RuntimeException.class, () -> post(fuel));
            assertEquals(documents, documents());
        } finally {
            bench.execute("alter table audit_event drop constraint full_up");
        }
        post(fuel);
        assertEquals(documents + 1, documents());
        assertEquals(1, lines(fuel.document()));
    }

    @Test
    void a_day_before_what_the_document_rests_on_is_refused() {
        LedgerRefusal.BeforeBasis refused = assertThrows(
                LedgerRefusal.BeforeBasis.class,
                () -> post(new Fuel(DocumentId.next(), LocalDate.of(2026, 1, 1), "6", OWNER)));
        assertEquals(List.of("date"), refused.fields());
        assertTrue(refused.text().contains("the tank"), refused.text());
    }
}
