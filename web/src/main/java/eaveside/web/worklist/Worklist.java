package eaveside.web.worklist;

import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.Money;
import eaveside.web.Names;
import eaveside.web.View;
import eaveside.web.worklist.Waiting.Type;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Puts together what waits, of every {@link Kind}: what has waited longest first. */
@Dependent
class Worklist {
    private final List<Kind> kinds;
    private final VisitsToBill visitsToBill;
    private final ReadInvoices readInvoices;
    private final Names names;

    @Inject
    Worklist(
            SentSheets sentSheets,
            OpenQuotes openQuotes,
            LateVisits lateVisits,
            VisitsToBill visitsToBill,
            ScopeChanges scopeChanges,
            PastDueInvoices pastDueInvoices,
            OpenFindings openFindings,
            LowStock lowStock,
            ReadInvoices readInvoices,
            Names names) {
        this.kinds = List.of(
                sentSheets,
                openQuotes,
                lateVisits,
                visitsToBill,
                scopeChanges,
                pastDueInvoices,
                openFindings,
                lowStock);
        this.visitsToBill = visitsToBill;
        this.readInvoices = readInvoices;
        this.names = names;
    }

    /**
     * What waits.
     *
     * @param  longest     what is shown: first what was sent from the site and nobody has read, for it may be urgent; then what
     *                    has waited longest
     * @param  counts      of each type that has any, whatever is shown
     * @param  toBill      cost of all work that is done and not billed; null for who may not see costs
     * @param  outstanding what customers owe in all
     * @param  pastDue     how much of that is past due
     */
    record Reading(
            List<Waiting> longest,
            Map<Type, Long> counts,
            @Nullable Money toBill,
            Money outstanding,
            Money pastDue) {
        long of(@Nullable Type type) {
            return type == null
                    ? counts.values().stream().mapToLong(Long::longValue).sum()
                    : counts.getOrDefault(type, 0L);
        }
    }

    /** Of one type or, for null, of all; shows at most so many. */
    Reading read(View view, @Nullable Type shown, int most) {
        Map<Type, Long> counts = new EnumMap<>(Type.class);
        List<Waiting> waiting = new ArrayList<>();
        for (Kind kind : kinds) {
            long count = kind.count(view);
            if (count == 0) {
                continue;
            }
            counts.put(kind.type(), count);
            if (shown == null || shown == kind.type()) {
                waiting.addAll(kind.longest(view, (int) Math.min(most, count)));
            }
        }
        List<Waiting> longest = waiting.stream()
                .sorted(Comparator.comparing((Waiting w) -> w.type() != Type.SHEET)
                        .thenComparing(Waiting::since))
                .limit(most)
                .toList();
        names.lookUp(longest.stream()
                .map(Waiting::customer)
                .filter(Objects::nonNull)
                .distinct()
                .toList());
        return new Reading(
                longest,
                counts,
                view.cost(visitsToBill.total()),
                readInvoices.outstandingInAll().open(),
                readInvoices.pastDueInAll().open());
    }
}
