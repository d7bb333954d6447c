package eaveside.web.visits;

import eaveside.kernel.Money;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.VisitLineId;
import eaveside.pricing.Explanation;
import eaveside.pricing.PriceBook;
import eaveside.pricing.PriceWork;
import eaveside.pricing.PricedWork;
import eaveside.pricing.ReadPriceBooks;
import eaveside.visits.JobSheet;
import eaveside.visits.SignedSheet;
import eaveside.visits.Visit;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What a visit's extras would bring if they were billed: for whoever decides about them. */
@Dependent
public class ExtraWorth {
    @Inject
    ReadPriceBooks priceBooks;

    @Inject
    PriceWork priceWork;

    /** The net price before any minimum, and how it came about. */
    public record Worth(Money net, Explanation explanation) {}

    /** By extra; one that the visit's price book has no price for is absent. */
    Map<VisitLineId, Worth> of(Visit visit, SignedSheet sheet) {
        PriceBook book = book(visit, sheet.completedOn());
        if (book == null || sheet.extras().isEmpty()) {
            return Map.of();
        }
        List<PriceWork.DoneLine> lines = new ArrayList<>();
        Map<VisitLineId, Visit.Line> planned =
                visit.lines().stream().collect(Collectors.toMap(Visit.Line::id, line -> line));
        for (JobSheet.DoneLine done : sheet.lines()) {
            Visit.Line line = planned.get(done.line());
            if (line != null && done.done().isPositive() && isPriced(book, line.serviceItem(), line.quoteLine())) {
                lines.add(new PriceWork.DoneLine(
                        line.id(), line.serviceItem(), done.done(), line.surface(), line.quoteLine(), false));
            }
        }
        for (JobSheet.Extra extra : sheet.extras()) {
            if (isPriced(book, extra.serviceItem(), null)) {
                lines.add(new PriceWork.DoneLine(
                        extra.id(), extra.serviceItem(), extra.quantity(), extra.surface(), null, false));
            }
        }
        Set<VisitLineId> extras =
                sheet.extras().stream().map(JobSheet.Extra::id).collect(Collectors.toSet());
        Map<VisitLineId, Worth> worth = new HashMap<>();
        if (!lines.isEmpty()) {
            for (PricedWork.Line line : priceWork.priceDone(book.id(), lines).lines()) {
                if (line.key() instanceof VisitLineId id && extras.contains(id)) {
                    worth.put(id, new Worth(line.netBeforeTopUp(), line.explanation()));
                }
            }
        }
        return worth;
    }

    private @Nullable PriceBook book(Visit visit, LocalDate day) {
        return visit.priceBook() == null
                ? priceBooks.findInForce(day).orElse(null)
                : priceBooks.book(visit.priceBook());
    }

    private static boolean isPriced(PriceBook book, ServiceItemId serviceItem, @Nullable QuoteLineId quoted) {
        return quoted != null || book.list().priceOf(serviceItem).isPresent();
    }
}
