package eaveside.ledger;

import eaveside.access.RecordAudit;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The one way in which documents come about, for every module, inside the transaction of its use case:
 *
 * <ol>
 *   <li>Whoever sends the same document id waits its turn; the same command again is answered as before, another command
 *       under the id is refused ({@link LedgerRefusal.IdTaken}).
 *   <li>Locks are taken in one order: records, the month against closing, customers, locations, at last the number.
 *   <li>The module decides: it answers what the document says, or refuses.
 *   <li>The document is dated, numbered and written with its entries; it is not dated before what it rests on.
 *   <li>What else follows is written by the module, and the deed stands on the audit log, in the same transaction.
 * </ol>
 */
@Dependent
public class Posting {
    private final PostDocument postDocument;
    private final Books books;
    private final RecordAudit audit;

    @Inject
    public Posting(PostDocument postDocument, Books books, RecordAudit audit) {
        this.postDocument = postDocument;
        this.books = books;
        this.audit = audit;
    }

    /** What a module decided to post. */
    public static final class Decided {
        private final DocumentKind kind;
        private final String summary;
        private final List<Entry> entries;
        private @Nullable DocumentId reverses;
        private boolean onItsDate;
        private final List<Floor> floors = new ArrayList<>();
        private Consumer<Posted> then = posted -> {};

        private Decided(DocumentKind kind, String summary, List<Entry> entries) {
            this.kind = kind;
            this.summary = summary;
            this.entries = List.copyOf(entries);
        }

        /** A document that says this; without entries where it only moves stock. */
        public static Decided document(DocumentKind kind, String summary, List<Entry> entries) {
            return new Decided(kind, summary, entries);
        }

        /** The document that this one takes back in full. */
        public Decided reversing(DocumentId original) {
            reverses = original;
            return this;
        }

        /** For a document that bears its date on paper: it is refused where that date cannot be kept. */
        public Decided onItsDate() {
            onItsDate = true;
            return this;
        }

        /**
         * Something that this document rests on, and cannot be dated before.
         *
         * @param what in words, such as {@code the job sheet}
         */
        public Decided notBefore(LocalDate date, String what) {
            floors.add(new Floor(date, what));
            return this;
        }

        /** What else is written once the document has its number. */
        public Decided then(Consumer<Posted> next) {
            Consumer<Posted> before = then;
            then = posted -> {
                before.accept(posted);
                next.accept(posted);
            };
            return this;
        }
    }

    private record Floor(LocalDate date, String what) {}

    /**
     * Posts what the module decides.
     *
     * @param action name of the deed on the audit log, such as {@code stock.transfer}
     * @param locks  what the decision is made on
     * @param decide gets the day that the document is about
     */
    @Transactional(TxType.MANDATORY)
    public <C extends Record & Postable> Posted post(
            String action, C command, List<Lock> locks, Function<LocalDate, Decided> decide) {
        Fingerprint fingerprint = Fingerprint.of(command);
        Optional<Posted> before = postDocument.alreadyPosted(command.document(), fingerprint);
        if (before.isPresent()) {
            return before.get();
        }
        LocalDate given = command.date();
        LocalDate day = given == null ? books.today() : given;
        List<Lock> ordered = locks.stream().sorted(Lock.ORDER).toList();
        take(ordered, Lock.Rank.RECORD, Lock.Rank.RECORD);
        postDocument.openDay(day);
        take(ordered, Lock.Rank.CUSTOMER, Lock.Rank.LOCATION);
        Decided decided = decide.apply(day);
        decided.floors.stream()
                .filter(floor -> day.isBefore(floor.date()))
                .findFirst()
                .ifPresent(floor -> {
                    throw new LedgerRefusal.BeforeBasis(day, floor.what(), floor.date());
                });
        NewDocument document = new NewDocument(
                command.document(),
                decided.kind,
                day,
                decided.reverses,
                decided.summary,
                command.by(),
                fingerprint,
                decided.entries);
        Posted posted = decided.onItsDate ? postDocument.postOn(document) : postDocument.post(document);
        decided.then.accept(posted);
        audit.done(action, command.by(), command.document());
        return posted;
    }

    private static void take(List<Lock> ordered, Lock.Rank from, Lock.Rank to) {
        ordered.stream()
                .filter(lock -> lock.rank().compareTo(from) >= 0 && lock.rank().compareTo(to) <= 0)
                .forEach(lock -> lock.take().run());
    }
}
