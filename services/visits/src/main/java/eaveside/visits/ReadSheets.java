package eaveside.visits;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Money;
import eaveside.kernel.PageKey;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Books;
import eaveside.ledger.CostType;
import eaveside.ledger.ReadLedger;
import eaveside.visits.internal.Crews;
import eaveside.visits.internal.ScopeChangeRow;
import eaveside.visits.internal.SheetRow;
import eaveside.visits.internal.SheetView;
import eaveside.visits.internal.VisitQueries;
import eaveside.visits.internal.Visits;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import org.hibernate.query.Page;
import org.jspecify.annotations.Nullable;

/** Shows signed-off sheets and the scope changes that the office has to decide. */
@Shared
public class ReadSheets {
    private final Visits visits;
    private final VisitQueries queries;
    private final Crews crews;
    private final ReadLedger readLedger;
    private final Books books;

    @Inject
    public ReadSheets(Visits visits, VisitQueries queries, Crews crews, ReadLedger readLedger, Books books) {
        this.visits = visits;
        this.queries = queries;
        this.crews = crews;
        this.readLedger = readLedger;
        this.books = books;
    }

    /** What a service line carries of a visit's cost, by type. */
    public record Cost(ServiceLineId serviceLine, CostType type, Money amount) {}

    /** Refuses an unknown id. */
    @Transactional
    public SignedSheet sheet(DocumentId id) {
        return view(visits.sheet(id));
    }

    /** The same for whoever asks: refuses a technician outside the crew with {@link VisitRefusal.NotYours}. */
    @Transactional
    public SignedSheet sheetFor(UserId reader, DocumentId id) {
        SheetRow row = visits.sheet(id);
        crews.requireOwn(reader, visits.required(row.visit()));
        return view(row);
    }

    /** Every sheet of a visit, reversed ones too, the oldest first. */
    @Transactional
    public List<SignedSheet> ofVisit(VisitId visit) {
        return queries.sheetsOf(visit).stream().map(this::view).toList();
    }

    /** What the sheet put into work in progress. Not for technicians. */
    @Transactional
    public List<Cost> costOf(DocumentId sheet) {
        return visits.sheet(sheet).cost(books.currency()).parts().stream()
                .map(part -> new Cost(part.serviceLine(), part.type(), part.amount()))
                .toList();
    }

    /** Scope changes of completed visits that are open or ask the customer, the oldest first. */
    @Transactional
    public Slice<ScopeChange> undecided(@Nullable String after, int size) {
        return slice(queries.undecidedAfter(PageKey.afterId(after), Page.first(size + 1)), size);
    }

    /** How many visits, completed by the day, have scope changes that are not all decided. */
    @Transactional
    public long countUndecidedVisitsBy(LocalDate day) {
        return queries.countUndecidedVisitsBy(day);
    }

    /** Skipped work decided as a return visit that none is scheduled for, the oldest first. */
    @Transactional
    public Slice<ScopeChange> awaitingReturnVisit(@Nullable String after, int size) {
        return slice(queries.awaitingReturnVisitAfter(PageKey.afterId(after), Page.first(size + 1)), size);
    }

    private SignedSheet view(SheetRow row) {
        return SheetView.of(
                row,
                readLedger.document(row.document()),
                queries.extraLines(row.document()),
                queries.scopeChanges(row.document()));
    }

    private static Slice<ScopeChange> slice(List<ScopeChangeRow> rows, int size) {
        return Slice.of(rows, size, row -> row.id().toString()).map(ScopeChangeRow::toScopeChange);
    }
}
