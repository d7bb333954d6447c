package eaveside.ledger;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.ledger.internal.AccountRow;
import eaveside.ledger.internal.ChartOfAccounts;
import eaveside.ledger.internal.DocumentRow;
import eaveside.ledger.internal.EntryRow;
import eaveside.ledger.internal.LedgerQueries;
import eaveside.ledger.internal.Periods;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Numbers, dates and writes documents; {@link Posting} alone asks it, so that its steps have one order everywhere. */
@Shared
class PostDocument {
    private final EntityManager entities;
    private final Books books;
    private final LedgerQueries queries;
    private final Periods periods;
    private final ChartOfAccounts chart;
    private final Clock clock;

    @Inject
    PostDocument(
            EntityManager entities,
            Books books,
            LedgerQueries queries,
            Periods periods,
            ChartOfAccounts chart,
            Clock clock) {
        this.entities = entities;
        this.books = books;
        this.queries = queries;
        this.periods = periods;
        this.chart = chart;
        this.clock = clock;
    }

    /** Whoever posts under the same id at the same time waits here for the other's commit. */
    void takeTurn(DocumentId id) {
        queries.takeTurn(id.toString());
    }

    /**
     * The document of that id if it was posted before: present for a retry. Refuses with {@link KernelRefusal.IdTaken}
     * where its content was another. Ask after {@link #takeTurn}.
     */
    Optional<Posted> alreadyPosted(DocumentId id, Fingerprint fingerprint) {
        DocumentRow row = entities.find(DocumentRow.class, id.value());
        if (row == null) {
            return Optional.empty();
        }
        if (!row.hasFingerprint(fingerprint)) {
            throw new KernelRefusal.IdTaken("document", id, row.label());
        }
        return Optional.of(row.toPosted());
    }

    /**
     * The first open day not before the service date, its period locked against closing until the transaction ends.
     * Refuses a service date later than today.
     */
    LocalDate openDay(LocalDate serviceDate) {
        LocalDate today = books.today();
        if (serviceDate.isAfter(today)) {
            throw new LedgerRefusal.DateInFuture(serviceDate, today);
        }
        return periods.lockOpenDay(serviceDate);
    }

    /**
     * The day on which {@link #post} dates a document of the type as the books stand, for what must be decided by it before
     * the document is posted. Takes no number: another document of the series may come between and move the posting to a
     * later day, never to an earlier one.
     *
     * @param  notBefore the document's open day, or the day of what it rests on
     */
    LocalDate postingDay(DocumentType type, LocalDate notBefore) {
        LocalDate last = queries.lastDateOf(type).stream().findFirst().orElse(null);
        return periods.lockOpenDay(later(notBefore, last));
    }

    /**
     * Draws the next number of the document's series and inserts the document with its entries, dated on the first open
     * day that is neither before the service date nor before the last document of the series.
     */
    Posted post(NewDocument document) {
        return post(document, document.serviceDate());
    }

    /** Like {@link #post(NewDocument)}, on a day that is not before the day of what the document rests on either. */
    Posted post(NewDocument document, LocalDate notBefore) {
        LocalDate day = openDay(document.serviceDate());
        long number = periods.drawNumber(document.type());
        LocalDate earliest = later(later(day, notBefore), periods.lastDateOf(document.type()));
        LocalDate date = earliest.isAfter(day) ? periods.lockOpenDay(earliest) : day;
        return insert(document, number, date);
    }

    private static LocalDate later(LocalDate one, @Nullable LocalDate other) {
        return other != null && other.isAfter(one) ? other : one;
    }

    /** Like {@link #post}, for a document that bears its date on paper: refuses a date that cannot be kept. */
    Posted postOn(NewDocument document) {
        LocalDate day = openDay(document.serviceDate());
        long number = periods.drawNumber(document.type());
        LocalDate last = periods.lastDateOf(document.type());
        LocalDate earliest = last == null || !last.isAfter(day) ? day : last;
        if (earliest.isAfter(document.serviceDate())) {
            throw new KernelRefusal.TooEarly(
                    "date", document.serviceDate(), earliest, "earlier dates are closed or have higher numbers");
        }
        return insert(document, number, day);
    }

    private Posted insert(NewDocument document, long number, LocalDate date) {
        DocumentRow row = new DocumentRow(document, number, date, clock.instant());
        entities.persist(row);
        int line = 0;
        for (Entry entry : document.entries()) {
            AccountRow account = chart.account(entry.account());
            account.requireDimensions(entry);
            books.ours(entry.amount(), "amount"); // the books have one currency, and an entry's is not stored
            entities.persist(new EntryRow(row, ++line, account, entry));
        }
        periods.dateSeries(document.type(), date);
        // The document must stand before the stock ledger or another table can point at it.
        entities.flush();
        return row.toPosted();
    }
}
