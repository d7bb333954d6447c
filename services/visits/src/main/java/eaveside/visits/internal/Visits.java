package eaveside.visits.internal;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Elements;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.ledger.Lock;
import eaveside.visits.Visit;
import eaveside.visits.VisitRefusal;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The visits and their planned lines. */
@Shared
public class Visits {
    private final EntityManager entities;
    private final VisitQueries queries;
    private final SoapCheck soapCheck;
    private final Clock clock;

    @Inject
    public Visits(EntityManager entities, VisitQueries queries, SoapCheck soapCheck, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.soapCheck = soapCheck;
        this.clock = clock;
    }

    /** Refuses an unknown id. */
    public VisitRow required(VisitId id) {
        VisitRow row = entities.find(VisitRow.class, id.value());
        if (row == null) {
            throw new KernelRefusal.NotFound("visit", id);
        }
        return row;
    }

    /** The visit, locked until the transaction ends; the first lock that any use case takes. */
    public VisitRow locked(VisitId id) {
        VisitRow row = entities.find(VisitRow.class, id.value(), LockModeType.PESSIMISTIC_WRITE);
        if (row == null) {
            throw new KernelRefusal.NotFound("visit", id);
        }
        return row;
    }

    /** The same as a posting's lock. */
    public Lock lockOf(VisitId id) {
        return Lock.of(Lock.Rank.RECORD, () -> locked(id));
    }

    /** The visit as scheduled before under that id; refuses one with other content. Rivals wait until this one is kept. */
    public Optional<Visit> alreadyScheduled(VisitId id, Fingerprint fingerprint) {
        queries.takeTurn(VisitQueries.SCHEDULING);
        VisitRow row = entities.find(VisitRow.class, id.value());
        if (row == null) {
            return Optional.empty();
        }
        row.requireSame(fingerprint);
        return Optional.of(view(row));
    }

    /** Stores a new visit. */
    public Visit add(NewVisit visit, Fingerprint fingerprint) {
        VisitRow row = new VisitRow(visit, fingerprint, clock.instant());
        entities.persist(row);
        // The visit must stand before its lines point at it.
        entities.flush();
        Elements.each("lines", visit.lines(), (line, i) -> {
            requireFree(line.id());
            entities.persist(new VisitLineRow(visit.id(), i + 1, line));
        });
        entities.flush();
        return view(row);
    }

    /** Refuses a line's id that is in use. */
    public void requireFree(VisitLineId line) {
        if (entities.find(VisitLineRow.class, line.value()) != null) {
            throw new KernelRefusal.IdTaken("visit line", line, "of another visit");
        }
    }

    public List<VisitLineRow> plannedLines(VisitRow visit) {
        return queries.plannedLines(visit.id());
    }

    /** The plan by line. */
    public static Map<VisitLineId, Quantity> plan(List<VisitLineRow> lines) {
        Map<VisitLineId, Quantity> plan = new LinkedHashMap<>();
        lines.forEach(line -> plan.put(line.id(), line.quantity()));
        return plan;
    }

    /** The sheet that the visit stands on. */
    public SheetRow sheetInForce(VisitRow visit) {
        return sheet(visit.sheet());
    }

    public SheetRow sheet(DocumentId id) {
        SheetRow row = entities.find(SheetRow.class, id.value());
        if (row == null) {
            throw new KernelRefusal.NotFound("job sheet", id);
        }
        return row;
    }

    public Visit view(VisitRow row) {
        List<VisitLineRow> lines = plannedLines(row);
        List<ScopeChangeRow> scopeChanges = row.hasSheet() ? queries.scopeChanges(row.sheet()) : List.of();
        return row.toVisit(
                lines.stream().map(VisitLineRow::toLine).toList(),
                soapCheck.ofPlan(lines),
                scopeChanges.stream().map(ScopeChangeRow::toScopeChange).toList());
    }

    /** Refuses while a scope change of the sheet in force is open or the customer has not answered yet. */
    public void requireDecided(List<ScopeChangeRow> scopeChanges) {
        long undecided =
                scopeChanges.stream().filter(d -> !d.decision().isSettled()).count();
        if (undecided > 0) {
            throw new VisitRefusal.Undecided(undecided);
        }
    }
}
