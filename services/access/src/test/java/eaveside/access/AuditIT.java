package eaveside.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Slice;
import eaveside.testing.Bench;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class AuditIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static User owner;

    @BeforeAll
    static void owner() {
        owner = AccessFixture.add(bench, Role.OWNER);
    }

    private static AuditFilter action(String action) {
        return new AuditFilter(null, action, null, null, null);
    }

    private static Slice<AuditLine> lines(AuditFilter filter, @Nullable String after, int size) {
        return bench.get(ReadAudit.class).lines(filter, after, size);
    }

    @Test
    void a_refusal_is_kept_though_the_work_rolled_back_and_a_deed_is_not() {
        RecordAudit audit = bench.get(RecordAudit.class);
        assertThrows(
                IllegalStateException.class,
                () -> bench.inTransaction(() -> {
                    audit.done(AuditEvent.done("kept.deed", owner.id(), "rolled back"));
                    audit.record(AuditEvent.refused("kept.refusal", owner.id(), "/margins")
                            .with("a technician asked for margins")
                            .from("192.0.2.7"));
                    throw new IllegalStateException("the work failed");
                }));
        AuditLine line = lines(action("kept."), null, 5).rows().getFirst();
        assertEquals(1, lines(action("kept."), null, 5).rows().size());
        assertEquals("/margins", line.subject());
        assertEquals("192.0.2.7", line.address());
        assertEquals(AuditEvent.Outcome.REFUSED, line.outcome());
        assertEquals(owner.name(), line.byName());
    }

    @Test
    void a_deed_joins_a_transaction_or_fails() {
        assertThrows(
                IllegalStateException.class,
                () -> bench.get(RecordAudit.class).done(AuditEvent.done("alone", owner.id(), "")));
    }

    @Test
    void a_refusal_can_be_kept_while_its_users_row_is_locked() {
        User another = AccessFixture.add(bench, Role.OWNER);
        assertTimeoutPreemptively(Duration.ofSeconds(20), () -> {
            assertThrows(
                    IllegalStateException.class,
                    () -> bench.inTransaction(() -> {
                        bench.get(ResetPassword.class)
                                .reset(
                                        owner.id(),
                                        new NewPassword("gutters clean by four"),
                                        bench.get(ReadUsers.class).credentials(owner.id()),
                                        another.id());
                        bench.get(RecordAudit.class).record(AuditEvent.refused("locked", owner.id(), "x"));
                        throw new IllegalStateException("the work failed");
                    }));
        });
        assertEquals(1, lines(action("locked"), null, 5).rows().size());
    }

    @Test
    void the_audit_log_is_append_only() {
        for (String sql :
                List.of("update audit_event set subject = 'x'", "delete from audit_event", "truncate audit_event")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql), sql);
            assertTrue(refused.getMessage().contains("permission denied"), sql + ": " + refused.getMessage());
            AssertionError owners = assertThrows(AssertionError.class, () -> bench.execute(sql), sql);
            assertTrue(String.valueOf(owners.getCause()).contains("append-only"), sql);
        }
    }

    @Test
    void pages_follow_each_other_without_gap_or_overlap() {
        RecordAudit audit = bench.get(RecordAudit.class);
        Instant begin = bench.clock().instant();
        for (int i = 0; i < 10; i++) {
            if (i % 4 == 0) {
                bench.clock().forward(Duration.ofNanos(1_000_777));
            }
            audit.record(AuditEvent.refused("paged.line", i % 2 == 0 ? owner.id() : null, "line " + i));
        }
        List<String> read = new ArrayList<>();
        String after = null;
        int pages = 0;
        do {
            Slice<AuditLine> page = lines(action("paged."), after, 3);
            page.rows().forEach(line -> read.add(line.subject()));
            after = page.next();
            pages++;
            audit.record(AuditEvent.refused("paged.line", null, "later, on top"));
            bench.clock().forward(Duration.ofSeconds(1));
        } while (after != null);
        assertEquals(4, pages);
        assertEquals(
                IntStream.rangeClosed(0, 9).mapToObj(i -> "line " + (9 - i)).toList(), read, "newest first");
        assertEquals(
                5,
                lines(new AuditFilter(owner.id(), "paged.line", AuditEvent.Outcome.REFUSED, begin, null), null, 50)
                        .rows()
                        .size());
        assertEquals(
                0,
                lines(new AuditFilter(null, "paged.line", null, null, begin), null, 50)
                        .rows()
                        .size());
        assertNull(lines(action("paged.nothing"), null, 5).next());
    }

    @Test
    void a_key_that_no_page_gave_is_refused() {
        for (String key : List.of("", "x", "2026-03-02T12:00:00Z", "2026-03-02T12:00:00Z_x", "_")) {
            assertThrows(KernelRefusal.BadPageKey.class, () -> lines(AuditFilter.everything(), key, 5), key);
        }
        assertThrows(AccessRefusal.BadAction.class, () -> action("no\0action"));
    }
}
