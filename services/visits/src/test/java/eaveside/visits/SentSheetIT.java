package eaveside.visits;

import static eaveside.visits.VisitsFixture.TODAY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.SentSheetId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.testing.Bench;
import eaveside.visits.SentSheet.Field;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class SentSheetIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    static VisitsFixture company;

    @BeforeAll
    static void found() {
        company = new VisitsFixture(bench);
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
        bench.clock().to(TODAY);
    }

    private static SheetToRecord sent(Visit visit, DocumentId sheet, UserId by, String note) {
        return new SheetToRecord(
                visit.id(),
                sheet,
                by,
                List.of(new Field("line-0-done", "48"), new Field("note", note)),
                "The visit is done",
                note.contains("urgent"));
    }

    private static SentSheetId record(SheetToRecord sent) {
        return bench.get(RecordSentSheet.class).record(sent).id();
    }

    private static ReadSentSheets reading() {
        return bench.get(ReadSentSheets.class);
    }

    /** What the worklist lists, in its order. */
    private static List<Map<String, Object>> unread() {
        return bench.rows(
                "select d.id, d.opens from due_items(?) d join sent_sheet s on s.id = d.id where d.type = 'SHEET'"
                        + " order by d.urgent desc, s.sent_at, s.id",
                TODAY);
    }

    private static SentSheetId id(Map<String, Object> row) {
        return new SentSheetId((UUID) row.get("id"));
    }

    private static List<SentSheetId> waiting(Visit visit) {
        return unread().stream()
                .filter(row -> row.get("opens").equals(visit.id().value()))
                .map(SentSheetIT::id)
                .toList();
    }

    @Test
    void what_was_sent_is_kept_as_it_was_and_once() {
        Visit visit = company.scheduled();
        SheetToRecord sent = sent(visit, DocumentId.next(), company.technician, "Loose tile\u0000");
        SentSheetId id = record(sent);
        assertEquals(id, record(sent), "the same again");
        assertEquals(
                id,
                record(new SheetToRecord(
                        sent.visit(), sent.sheet(), sent.by(), sent.fields(), "Another reason", false)),
                "whatever it is refused for");

        SentSheet read = reading().sheet(id);
        assertEquals(List.of(new Field("line-0-done", "48"), new Field("note", "Loose tile\ufffd")), read.fields());
        assertEquals("The visit is done", read.refusal());
        assertEquals(company.technician, read.by());
        assertNull(read.read());
        assertFalse(read.settled());
        assertEquals(List.of(id), waiting(visit));
        assertEquals(
                List.of(id),
                reading().ofVisit(visit.id()).stream().map(SentSheet::id).toList());
    }

    @Test
    void two_at_once_are_one_row() {
        Visit visit = company.scheduled();
        SheetToRecord sent = sent(visit, DocumentId.next(), company.technician, "Twice");
        List<CompletableFuture<SentSheetId>> both = Stream.of(1, 2)
                .map(i -> CompletableFuture.supplyAsync(() -> record(sent)))
                .toList();
        assertEquals(both.getFirst().join(), both.getLast().join());
        assertEquals(1, reading().ofVisit(visit.id()).size());
    }

    @Test
    void what_was_corrected_and_sent_again_waits_for_nobody() {
        Visit visit = company.scheduled();
        DocumentId sheet = DocumentId.next();
        SentSheetId first = record(sent(visit, sheet, company.technician, "Forty"));
        bench.clock().forward(Duration.ofMinutes(1));
        SentSheetId second = record(sent(visit, sheet, company.technician, "Forty-six"));
        assertEquals(List.of(second), waiting(visit), "the latest of it alone");
        SentSheetId others = record(sent(visit, DocumentId.next(), company.other, "Mine"));

        bench.get(SignOffVisit.class).signOff(company.sheet(visit).id(sheet).build());

        assertEquals(List.of(others), waiting(visit), "the other phone's stays");
        assertTrue(reading().sheet(first).settled() && reading().sheet(second).settled());

        SentSheetId after = record(sent(visit, sheet, company.technician, "And something else"));
        assertTrue(waiting(visit).contains(after), "sent after it was signed off under the same id");
    }

    @Test
    void urgent_ones_come_first_until_the_office_has_read_them() {
        Visit visit = company.scheduled();
        record(sent(visit, DocumentId.next(), company.technician, "Older"));
        bench.clock().forward(Duration.ofHours(1));
        SentSheetId urgent = record(sent(visit, DocumentId.next(), company.other, "urgent: bare wire"));
        assertEquals(urgent, id(unread().getFirst()));
        int before = unread().size();

        for (UserId reader : List.of(company.office, company.owner)) {
            bench.get(AcknowledgeSentSheet.class).acknowledge(new Acknowledgment(urgent, "Called them", reader));
        }

        assertEquals(before - 1, unread().size());
        SentSheet.Reading read = Objects.requireNonNull(reading().sheet(urgent).read());
        assertEquals(company.office, read.by(), "the first who read it");
        assertEquals("Called them", read.note());
    }

    @Test
    void what_cannot_be_is_refused() {
        Visit visit = company.scheduled();
        assertThrows(
                VisitRefusal.NothingSent.class,
                () -> new SheetToRecord(visit.id(), null, company.technician, List.of(), "No", false));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> record(new SheetToRecord(
                        VisitId.next(), null, company.technician, List.of(new Field("note", "x")), "No", false)));
        assertThrows(KernelRefusal.NotFound.class, () -> reading().sheet(SentSheetId.next()));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> bench.get(AcknowledgeSentSheet.class)
                        .acknowledge(new Acknowledgment(SentSheetId.next(), "", company.office)));
    }

    @Test
    void the_database_lets_nothing_that_was_sent_change() {
        Visit visit = company.scheduled();
        SentSheetId id = record(sent(visit, DocumentId.next(), company.technician, "As it was"));
        for (String sql : List.of(
                "update sent_sheet set refusal = 'x'",
                "delete from sent_sheet",
                "update sent_sheet_field set value = 'x'",
                "delete from sent_sheet_field",
                "insert into sent_sheet_field (sent_sheet_id, position, name, value) values ('" + id
                        + "', 9, 'note', 'x')",
                "insert into sent_sheet (id, visit_id, sent_by, sent_at, refusal, urgent, fingerprint) values"
                        + " (gen_random_uuid(), '" + visit.id() + "', '" + company.technician
                        + "', timestamptz '2026-03-02 12:00Z', 'x', false, repeat('0', 64))")) {
            assertThrows(SQLException.class, () -> bench.executeAsApplication(sql), sql);
        }
        assertEquals("As it was", reading().sheet(id).fields().getLast().value());
    }
}
