package eaveside.findings;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Slice;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.testing.Bench;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class FindingsIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private FindingFixture fixture;

    @BeforeEach
    void arrange() {
        bench.clock().forward(Duration.ofMinutes(1));
        fixture = new FindingFixture(bench);
    }

    private ReadFindings read() {
        return bench.get(ReadFindings.class);
    }

    private ActOnFinding act() {
        return bench.get(ActOnFinding.class);
    }

    @Test
    void keeps_what_was_seen_with_its_photos_in_order() {
        PhotoId first = fixture.photo(60, 40);
        PhotoId second = fixture.photo(40, 60);
        FindingId id = fixture.open("CRACKED_GLASS", "URGENT", List.of(second, first));
        FindingView view = read().finding(id);
        assertEquals(FindingView.Status.OPEN, view.status());
        assertEquals("glazier", view.type().trade());
        assertTrue(view.type().caution().contains("follow local codes"));
        assertEquals("Urgent", view.severity().name());
        assertEquals(
                List.of(second, first), view.photos().stream().map(Photo::id).toList());
        assertEquals(bench.clock().instant(), view.openedAt());
        assertEquals(List.of(view), read().ofVisit(fixture.visit()));
        assertEquals(List.of(view), read().ofCustomer(fixture.customer(), 5));
    }

    @Test
    void the_same_finding_again_changes_nothing_and_other_content_is_a_conflict() {
        NewFinding finding = fixture.finding(FindingId.next(), "RUST", "NOTE", List.of());
        fixture.open(finding);
        fixture.open(finding);
        assertEquals(1, read().ofVisit(fixture.visit()).size());
        NewFinding other = fixture.finding(finding.id(), "NEST", "NOTE", List.of());
        assertThrows(KernelRefusal.IdTaken.class, () -> fixture.open(other));
    }

    @Test
    void a_refused_finding_leaves_nothing_half_written() {
        PhotoId photo = fixture.photo(60, 40);
        FindingFixture elsewhere = new FindingFixture(bench);
        FindingId id = FindingId.next();
        assertThrows(
                FindingRefusal.PhotoNotOfVisit.class,
                () -> elsewhere.open(elsewhere.finding(id, "RUST", "NOTE", List.of(photo))));
        assertThrows(
                FindingRefusal.PhotoNotOfVisit.class,
                () -> fixture.open(fixture.finding(id, "RUST", "NOTE", List.of(photo, PhotoId.next()))));
        assertThrows(KernelRefusal.NotFound.class, () -> fixture.open(fixture.finding(id, "GHOST", "NOTE", List.of())));
        assertThrows(KernelRefusal.NotFound.class, () -> fixture.open(fixture.finding(id, "RUST", "AWFUL", List.of())));
        assertThrows(KernelRefusal.Unfit.class, () -> fixture.finding(id, "rust!", "NOTE", List.of()));
        assertThrows(KernelRefusal.NotFound.class, () -> read().finding(id));
        assertEquals(0L, bench.value("select count(*) from finding_photo where photo_id = ?", photo.value()));
    }

    @Test
    void the_database_refuses_the_photo_of_another_visit() {
        PhotoId photo = fixture.photo(60, 40);
        FindingId id = new FindingFixture(bench).open("RUST", "NOTE", List.of());
        SQLException refused = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(
                        "insert into finding_photo (finding_id, photo_id, visit_id, position) values (?, ?, ?, 1)",
                        id.value(),
                        photo.value(),
                        fixture.visit().value()));
        assertTrue(refused.getMessage().contains("foreign key"), refused.getMessage());
    }

    @Test
    void the_database_refuses_the_site_of_another_customer() {
        FindingId id = fixture.open("RUST", "NOTE", List.of());
        SQLException refused = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(
                        "insert into finding (id, type_code, severity_code, visit_id, customer_id, site_id, note,"
                                + " customer_notified, opened_by, opened_at, fingerprint) select ?, type_code, severity_code,"
                                + " visit_id, customer_id, ?, note, customer_notified, opened_by, opened_at, fingerprint"
                                + " from finding where id = ?",
                        FindingId.next().value(),
                        new FindingFixture(bench).site().value(),
                        id.value()));
        assertTrue(refused.getMessage().contains("foreign key"), refused.getMessage());
    }

    @Test
    void several_actions_until_closed_each_once() {
        FindingId id = fixture.open("EXPOSED_CONDUCTOR", "URGENT", List.of());
        UserId by = fixture.technician();
        var notice = new FindingAction.Notice(FindingActionId.next(), id, "kim@example.com", "", by);
        act().sendNotice(notice);
        act().sendNotice(notice);
        bench.clock().forward(Duration.ofHours(1));
        var referral =
                new FindingAction.Referral(FindingActionId.next(), id, "electrician", "Ampere & Daughter", "", by);
        act().refer(referral);
        bench.clock().forward(Duration.ofHours(1));
        var upsell = new FindingAction.Upsell(FindingActionId.next(), id, "Offer a spring clean", by);
        act().noteUpsell(upsell);
        bench.clock().forward(Duration.ofHours(1));
        var closing = new FindingAction.Closing(FindingActionId.next(), id, "Mended, says the customer", by);
        act().close(closing);
        act().close(closing);
        assertEquals(
                List.of(notice, referral, upsell, closing),
                read().finding(id).actions().stream()
                        .map(FindingView.Action::action)
                        .toList());
        assertEquals(FindingView.Status.CLOSED, read().finding(id).status());
        assertThrows(
                FindingRefusal.AlreadyClosed.class,
                () -> act().noteUpsell(new FindingAction.Upsell(FindingActionId.next(), id, "Late", by)));
        assertThrows(
                KernelRefusal.IdTaken.class,
                () -> act().close(new FindingAction.Closing(closing.id(), id, "Another reason", by)));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> act().close(new FindingAction.Closing(FindingActionId.next(), FindingId.next(), "x", by)));
        assertThrows(KernelRefusal.BadText.class, () -> new FindingAction.Closing(FindingActionId.next(), id, " ", by));
    }

    @Test
    void of_many_who_close_at_once_one_does() throws Exception {
        FindingId id = fixture.open("RUST", "NOTE", List.of());
        List<Callable<Boolean>> closers = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            closers.add(() -> {
                try {
                    act().close(new FindingAction.Closing(FindingActionId.next(), id, "Painted", fixture.technician()));
                    return true;
                } catch (FindingRefusal.AlreadyClosed refused) {
                    return false;
                }
            });
        }
        int closed = 0;
        try (ExecutorService pool = Executors.newFixedThreadPool(8)) {
            for (Future<Boolean> result : pool.invokeAll(closers)) {
                closed += result.get() ? 1 : 0;
            }
        }
        assertEquals(1, closed);
        assertEquals(1, read().finding(id).actions().size());
    }

    @Test
    void the_same_action_twice_at_once_is_one_and_its_retry() throws Exception {
        FindingId id = fixture.open("RUST", "NOTE", List.of());
        FindingId other = fixture.open("NEST", "NOTE", List.of());
        UserId by = fixture.technician();
        var upsell = new FindingAction.Upsell(FindingActionId.next(), id, "Paint the gutter", by);
        Callable<Void> sent = () -> {
            act().noteUpsell(upsell);
            return null;
        };
        Callable<Boolean> elsewhere = () -> tried(new FindingAction.Upsell(upsell.id(), other, "Paint the gutter", by));
        try (ExecutorService pool = Executors.newFixedThreadPool(3)) {
            for (Future<Void> sending : pool.invokeAll(List.of(sent, sent))) {
                sending.get();
            }
            assertEquals(false, pool.submit(elsewhere).get(), "one id, two findings");
            var rivals = new FindingAction.Upsell(FindingActionId.next(), id, "Paint", by);
            Callable<Boolean> here = () -> tried(rivals);
            Callable<Boolean> there = () -> tried(new FindingAction.Upsell(rivals.id(), other, "Paint", by));
            int done = 0;
            for (Future<Boolean> sending : pool.invokeAll(List.of(here, there))) {
                done += sending.get() ? 1 : 0;
            }
            assertEquals(1, done, "also where both come at once");
        }
        assertEquals(
                1L,
                bench.value(
                        "select count(*) from finding_action where id = ?",
                        upsell.id().value()));
        assertEquals(
                2L,
                bench.value(
                        "select count(*) from audit_event where action = 'finding.act' and subject in (?, ?)",
                        id.toString(),
                        other.toString()),
                "one line for each action that came about");
    }

    private boolean tried(FindingAction.Upsell upsell) {
        try {
            act().noteUpsell(upsell);
            return true;
        } catch (KernelRefusal.IdTaken refused) {
            return false;
        }
    }

    @Test
    void the_database_keeps_actions_and_refuses_more_after_closing() {
        FindingId id = fixture.open("RUST", "NOTE", List.of());
        act().close(new FindingAction.Closing(FindingActionId.next(), id, "Painted", fixture.technician()));
        for (String sql : List.of(
                "update finding_action set note = 'other'",
                "delete from finding_action",
                "update finding set note = 'other'",
                "delete from finding")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql), sql);
            assertTrue(refused.getMessage().contains("permission denied"), sql + ": " + refused.getMessage());
        }
        SQLException late = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(
                        "insert into finding_action (id, finding_id, type, note, given_by, given_at, fingerprint)"
                                + " values (?, ?, 'UPSELL', 'x', ?, now(), repeat('0', 64))",
                        FindingActionId.next().value(),
                        id.value(),
                        fixture.technician().value()));
        assertTrue(late.getMessage().contains("no further answer"), late.getMessage());
        SQLException reopened = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication("update finding set closed_at = null where id = ?", id.value()));
        assertTrue(reopened.getMessage().contains("does not reopen"), reopened.getMessage());
    }

    @Test
    void reversing_the_sheet_withdraws_its_findings_and_frees_their_photos() {
        PhotoId photo = fixture.photo(60, 40);
        NewFinding wrong = fixture.finding(FindingId.next(), "RUST", "NOTE", List.of(photo));
        fixture.open(wrong);
        fixture.open("NEST", "NOTE", List.of());
        UserId by = fixture.technician();
        assertEquals(2, fixture.withdraw(by));
        assertEquals(0, fixture.withdraw(by), "a second time there is nothing left");
        assertEquals(FindingView.Status.WITHDRAWN, read().finding(wrong.id()).status());
        assertThrows(
                FindingRefusal.Withdrawn.class,
                () -> act().noteUpsell(new FindingAction.Upsell(FindingActionId.next(), wrong.id(), "x", by)));
        assertThrows(FindingRefusal.Withdrawn.class, () -> fixture.open(wrong));
        FindingId right = fixture.open("LICHEN", "NOTE", List.of(photo));
        assertEquals(photo, read().finding(right).photos().getFirst().id());
        assertEquals(3, read().ofVisit(fixture.visit()).size());
    }

    @Test
    void open_findings_page_from_the_oldest() {
        List<FindingId> opened = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            opened.add(fixture.open("RUST", "SOON", i == 2 ? List.of(fixture.photo(9, 9)) : List.of()));
            if (i % 2 == 1) {
                bench.clock().forward(Duration.ofDays(1));
            }
        }
        UserId by = fixture.technician();
        act().sendNotice(new FindingAction.Notice(FindingActionId.next(), opened.get(2), "by hand", "", by));
        act().close(new FindingAction.Closing(FindingActionId.next(), opened.get(1), "Nothing to do", by));

        List<FindingLine> seen = new ArrayList<>();
        Slice<FindingLine> page = read().open(null, 2);
        seen.addAll(page.rows());
        while (page.next() != null) {
            page = read().open(page.next(), 2);
            seen.addAll(page.rows());
        }
        List<FindingLine> own = seen.stream()
                .filter(line -> line.visit().equals(fixture.visit()))
                .toList();
        assertEquals(
                List.of(opened.get(0), opened.get(2), opened.get(3), opened.get(4)),
                own.stream().map(FindingLine::id).toList());
        assertEquals(1, own.get(1).actions());

        // Closed ones are a list of their own, and both can be narrowed to customers.
        CustomerId customer = own.getFirst().customer();
        List<FindingId> closed = read().closed(null, 100).rows().stream()
                .filter(line -> line.status() == FindingView.Status.CLOSED)
                .filter(line -> line.visit().equals(fixture.visit()))
                .map(FindingLine::id)
                .toList();
        assertEquals(List.of(opened.get(1)), closed);
        assertEquals(own, read().ofCustomers(List.of(customer), true, null, 100).rows());
        assertEquals(
                closed,
                read().ofCustomers(List.of(customer), false, null, 100).rows().stream()
                        .map(FindingLine::id)
                        .toList());
        assertEquals(
                List.of(),
                read().ofCustomers(List.of(CustomerId.next()), true, null, 100).rows());
        for (String key : List.of("nonsense", "2026-01-01T00:00:00Z_nonsense", "2026-01-01T00:00:00Z")) {
            assertThrows(KernelRefusal.BadPageKey.class, () -> read().open(key, 10), key);
        }
        assertEquals(1, own.get(1).photos());
        assertEquals(0, own.get(2).actions());
        assertEquals("Rust", own.get(0).typeName());
    }

    @Test
    void a_photo_is_kept_once_and_read_back_in_both_sizes() {
        byte[] file = Pictures.withExif(Pictures.jpeg(2000, 1000), 6);
        PhotoId id = PhotoId.next();
        StorePhoto store = bench.get(StorePhoto.class);
        UserId by = fixture.technician();
        Photo photo = store.store(id, fixture.visit(), by, file);
        assertEquals(photo, store.store(id, fixture.visit(), by, file));
        assertEquals(800, photo.width());
        assertEquals(1600, photo.height());
        assertThrows(
                KernelRefusal.IdTaken.class, () -> store.store(id, fixture.visit(), by, Pictures.jpeg(2000, 1001)));
        assertThrows(KernelRefusal.IdTaken.class, () -> store.store(id, VisitId.next(), by, file));

        ReadPhoto readPhoto = bench.get(ReadPhoto.class);
        assertEquals(photo, readPhoto.photo(id));
        assertEquals(List.of(photo), readPhoto.ofVisit(fixture.visit()));
        assertEquals(
                800,
                Pictures.decoded(readPhoto.picture(id, Photo.Size.FULL).jpeg()).getWidth());
        Picture thumbnail = readPhoto.picture(id, Photo.Size.THUMBNAIL);
        assertEquals(320, Pictures.decoded(thumbnail.jpeg()).getHeight());
        assertArrayEquals(
                thumbnail.jpeg(), readPhoto.picture(id, Photo.Size.THUMBNAIL).jpeg());
        assertThrows(KernelRefusal.NotFound.class, () -> readPhoto.photo(PhotoId.next()));
        assertThrows(KernelRefusal.NotFound.class, () -> readPhoto.picture(PhotoId.next(), Photo.Size.FULL));
    }

    @Test
    void a_refused_photo_leaves_nothing_behind() {
        PhotoId id = PhotoId.next();
        assertThrows(
                FindingRefusal.UnsupportedPicture.class,
                () -> bench.get(StorePhoto.class)
                        .store(id, fixture.visit(), UserId.next(), Pictures.ascii("%PDF-1.7 photo.jpg")));
        assertEquals(0L, bench.value("select count(*) from photo where id = ?", id.value()));
        assertEquals(0L, bench.value("select count(*) from photo_image where photo_id = ?", id.value()));
    }

    /** Whatever a technician has sent can be read by the office for good. */
    @Test
    void a_photo_that_was_sent_stays() {
        PhotoId sent = fixture.photo(60, 40);
        for (String delete : List.of(
                "delete from photo_image where photo_id = '" + sent + "'",
                "delete from photo where id = '" + sent + "'")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(delete));
            assertEquals("42501", refused.getSQLState(), "insufficient privilege");
        }
        assertNotNull(bench.get(ReadPhoto.class).picture(sent, Photo.Size.FULL));
        assertEquals(
                List.of(Map.of("action", "photo.store")),
                bench.rows("select action from audit_event where subject = '" + sent + "' order by id"));
    }

    @Test
    void the_database_keeps_only_jpeg_pictures() {
        PhotoId id = fixture.photo(60, 40);
        SQLException refused = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(
                        "insert into photo_image (photo_id, size, width, height, content) values (?, 'FULL', 9, 9, ?)",
                        id.value(),
                        Pictures.ascii("%PDF-1.7")));
        assertTrue(refused.getMessage().contains("check"), refused.getMessage());
    }

    @Test
    void types_are_data() throws Exception {
        SaveFindingType save = bench.get(SaveFindingType.class);
        UserId by = fixture.technician();
        FindingTypeCode code = new FindingTypeCode("LOOSE_DOWNPIPE");
        FindingType first = new FindingType(code, "Loose downpipe", "", "", true, 0);
        try (ExecutorService pool = Executors.newFixedThreadPool(2)) {
            Callable<FindingType> sent = () -> save.save(first, by);
            for (Future<FindingType> sending : pool.invokeAll(List.of(sent, sent))) {
                assertEquals(first.withVersion(1), sending.get(), "two at once are one and its retry");
            }
        }
        assertEquals(
                1L,
                bench.value("select count(*) from audit_event where action = 'finding-type.save'"
                        + " and subject = 'LOOSE_DOWNPIPE'"));
        FindingType anew = new FindingType(code, "Entered anew by another", "", "", true, 0);
        KernelRefusal.Stale stale = assertThrows(KernelRefusal.Stale.class, () -> save.save(anew, by));
        assertEquals(first.withVersion(1), stale.theirs());
        save.save(new FindingType(code, "Loose downspout", "roofer", "Keep clear", true, 1), by);
        FindingType saved = read().types().stream()
                .filter(type -> type.code().equals(code))
                .findFirst()
                .orElseThrow();
        assertEquals(new FindingType(code, "Loose downspout", "roofer", "Keep clear", true, 2), saved);
        assertThrows(
                KernelRefusal.Taken.class,
                () -> save.save(new FindingType(new FindingTypeCode("RUST_2"), "rust", "", "", true, 0), by));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> save.save(new FindingType(new FindingTypeCode("RUST_2"), "Rust two", "", "", true, 1), by));
        save.save(new FindingType(code, "Loose downspout", "roofer", "Keep clear", false, 2), by);
        FindingId id = fixture.open("LOOSE_DOWNPIPE", "NOTE", List.of());
        assertEquals(
                "Loose downspout", read().finding(id).type().name(), "a retired type is still taken from a stale list");
        assertNull(read().finding(id).surface());
        assertEquals(
                List.of("Note", "Soon", "Urgent"),
                read().severities().stream().map(Severity::name).toList());
    }
}
