package eaveside.worklist;

import eaveside.access.RecordAudit;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.worklist.internal.AsideQueries;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Takes things off the worklist until a day, with a note why, and puts them on it again. A technician's note that was read is
 * taken off for good. What is put aside twice is put aside as it was said last.
 */
@Shared
public class PutAside {
    private static final int MOST_AT_ONCE = 1000;
    private static final int LONGEST_NOTE = 500;

    /** What is put aside for longer is forgotten. */
    private static final int LONGEST_DAYS = 366;

    private final AsideQueries queries;
    private final RecordAudit audit;
    private final Books books;
    private final Clock clock;

    @Inject
    public PutAside(AsideQueries queries, RecordAudit audit, Books books, Clock clock) {
        this.queries = queries;
        this.audit = audit;
        this.books = books;
        this.clock = clock;
    }

    /** Refuses a day that is not after today or more than a year ahead, nothing chosen, and more than 1,000 at once. */
    @Transactional
    public void until(List<DueKey> items, LocalDate day, String note, UserId by) {
        LocalDate today = books.today();
        if (!day.isAfter(today) || day.isAfter(today.plusDays(LONGEST_DAYS))) {
            throw new KernelRefusal.BadText("until", "is a day after today, at most a year ahead");
        }
        put(items, day, Texts.optional("note", note, LONGEST_NOTE), by);
    }

    /** Marks technicians' notes as read; refuses anything else. */
    @Transactional
    public void read(List<DueKey> notes, UserId by) {
        if (notes.stream().anyMatch(key -> key.type() != DueType.NOTE)) {
            throw new KernelRefusal.BadText("item", "is no technician's note");
        }
        put(notes, null, "", by);
    }

    /** Puts them on the worklist again; what is not put aside stays as it is. */
    @Transactional
    public void takeUp(List<DueKey> items, UserId by) {
        check(items).forEach(key -> {
            queries.delete(key.type().name(), key.thing(), key.place());
            audit.done("worklist.take-up", by, key);
        });
    }

    private void put(List<DueKey> items, @Nullable LocalDate until, String note, UserId by) {
        check(items).forEach(key -> {
            queries.put(key.type().name(), key.thing(), key.place(), until, note, by.value(), clock.instant());
            audit.done("worklist.put-aside", by, key);
        });
    }

    /** In one order for everybody, so that two who put the same aside wait for each other instead of both. */
    private static List<DueKey> check(List<DueKey> items) {
        if (items.isEmpty()) {
            throw new KernelRefusal.BadText("item", "is required");
        }
        if (items.size() > MOST_AT_ONCE) {
            throw new KernelRefusal.OutOfRange("item", items.size(), 1, MOST_AT_ONCE);
        }
        return items.stream()
                .distinct()
                .sorted((a, b) -> a.toString().compareTo(b.toString()))
                .toList();
    }
}
