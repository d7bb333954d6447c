package eaveside.ledger;

import eaveside.access.RecordAudit;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Refusal;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * The one way in which documents come about, for every module, inside the transaction of its use case:
 *
 * <ol>
 *   <li>Whoever sends the same document id waits its turn; the same command again is answered as before, another command
 *       under the id is refused ({@link KernelRefusal.IdTaken}).
 *   <li>Locks are taken in one order: records, the month against closing, customers, locations, at last the number.
 *   <li>The module decides what the document says, or refuses.
 *   <li>The document is numbered, dated and written with its entries, not before what it rests on.
 *   <li>What else follows is written by the module, and the deed stands on the audit log, in the same transaction.
 * </ol>
 */
@Shared
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

    /**
     * The day of a document that is being decided.
     *
     * @param date that it is about
     * @param open the first day from there on in an open month; it posts then or later
     */
    public record Day(LocalDate date, LocalDate open) {}

    /**
     * Posts what the module decides. Refuses a day to come, a day before what the document rests on or long before the books,
     * and whatever a lock or the decision refuses.
     *
     * @param action of the audit log, such as {@code stock.transfer}
     * @param locks  what is decided on, in any order
     */
    @Transactional(TxType.MANDATORY)
    public <C extends Record & Postable> Posted post(
            String action, C command, List<Lock> locks, Function<Day, Decided> decide) {
        Stream.concat(command.alongWith().stream(), Stream.of(command.document()))
                .sorted((a, b) -> a.value().compareTo(b.value()))
                .forEach(postDocument::takeTurn);
        Optional<Posted> before = postDocument.alreadyPosted(command.document(), Fingerprint.of(command));
        try {
            return before.orElseGet(() -> done(action, command, locks, decide));
        } catch (Refusal refusal) {
            throw refusal.called("date", command.dateField());
        }
    }

    private <C extends Record & Postable> Posted done(
            String action, C command, List<Lock> locks, Function<Day, Decided> decide) {
        Decided decided = decided(command, locks, decide);
        Posted posted = written(command, decided);
        Object subject = decided.subject;
        audit.done(action, command.by(), subject == null ? command.document() : subject);
        return posted;
    }

    /** The same for a document that comes about within another one's decision, on whose line of the audit log it is. */
    @Transactional(TxType.MANDATORY)
    public <C extends Record & Postable> Posted within(C command, List<Lock> locks, Function<Day, Decided> decide) {
        Optional<Posted> before = postDocument.alreadyPosted(command.document(), Fingerprint.of(command));
        return before.orElseGet(() -> written(command, decided(command, locks, decide)));
    }

    /**
     * The day on which a document of the type is posted as the books stand, for what must be decided by it. Takes no number:
     * another document of the series may come between and move the posting to a later day, never to an earlier one.
     *
     * @param notBefore the document's open day, or the day of what it rests on
     */
    @Transactional(TxType.MANDATORY)
    public LocalDate postingDay(DocumentType type, LocalDate notBefore) {
        return postDocument.postingDay(type, notBefore);
    }

    private Decided decided(Postable command, List<Lock> locks, Function<Day, Decided> decide) {
        List<Lock> ordered = locks.stream().sorted(Lock.ORDER).toList();
        ordered.stream().filter(Lock::isTakenBeforeTheMonth).forEach(Lock::take);
        LocalDate date = dateOf(command);
        LocalDate open = postDocument.openDay(date);
        ordered.stream().filter(lock -> !lock.isTakenBeforeTheMonth()).forEach(Lock::take);
        Decided decided = decide.apply(new Day(date, open));
        for (Decided.Basis basis : decided.bases) {
            if (date.isBefore(basis.date())) {
                throw new LedgerRefusal.BeforeBasis(date, basis.what(), basis.date());
            }
        }
        books.near(date, "date");
        return decided;
    }

    private <C extends Record & Postable> Posted written(C command, Decided decided) {
        LocalDate date = dateOf(command);
        DocumentId reverses = decided.reverses;
        NewDocument document = new NewDocument(
                command.document(),
                decided.type,
                date,
                reverses,
                decided.summary,
                command.by(),
                Fingerprint.of(command),
                decided.entries);
        LocalDate notBefore = decided.notBefore;
        Posted posted = decided.onItsDate
                ? postDocument.postOn(document)
                : postDocument.post(document, notBefore == null ? date : notBefore);
        decided.then.forEach(next -> next.accept(posted));
        return posted;
    }

    private LocalDate dateOf(Postable command) {
        LocalDate date = command.date();
        return date == null ? books.today() : date;
    }
}
