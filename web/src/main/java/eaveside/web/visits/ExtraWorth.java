package eaveside.web.visits;

import eaveside.kernel.Shared;
import eaveside.kernel.VisitLineId;
import eaveside.pricing.PriceBook;
import eaveside.pricing.PriceWork;
import eaveside.pricing.PricedWork;
import eaveside.pricing.ReadPriceBooks;
import eaveside.visits.SignedSheet;
import eaveside.visits.Visit;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a visit's extras would bring if they were billed: for whoever decides about them. */
@Shared
public class ExtraWorth {
    @Inject
    ReadPriceBooks priceBooks;

    @Inject
    PriceWork priceWork;

    /** By extra, priced beside the planned work that was done; one that the visit's price book has no price for is absent. */
    Map<VisitLineId, PricedWork.Line> of(Visit visit, SignedSheet sheet) {
        PriceBook book = visit.priceBook() == null
                ? priceBooks.findInForce(sheet.completedOn()).orElse(null)
                : priceBooks.book(visit.priceBook());
        if (book == null || sheet.extras().isEmpty()) {
            return Map.of();
        }
        Map<VisitLineId, Visit.Line> plan =
                visit.lines().stream().collect(Collectors.toMap(Visit.Line::id, Function.identity()));
        Stream<PriceWork.DoneLine> planned = sheet.lines().stream()
                .filter(done -> plan.containsKey(done.line()) && done.done().isPositive())
                .map(done -> {
                    Visit.Line line = Objects.requireNonNull(plan.get(done.line()));
                    return new PriceWork.DoneLine(
                            line.id(), line.serviceItem(), done.done(), line.surface(), line.quoteLine(), false);
                });
        Stream<PriceWork.DoneLine> extras = sheet.extras().stream()
                .map(extra -> new PriceWork.DoneLine(
                        extra.id(), extra.serviceItem(), extra.quantity(), extra.surface(), null, false));
        List<PriceWork.DoneLine> priced = Stream.concat(planned, extras)
                .filter(line -> line.quoteLine() != null
                        || book.list().priceOf(line.serviceItem()).isPresent())
                .toList();
        return priced.isEmpty()
                ? Map.of()
                : priceWork.priceDone(book.id(), priced).lines().stream()
                        .filter(line -> line.key() instanceof VisitLineId id && !plan.containsKey(id))
                        .collect(Collectors.toMap(line -> (VisitLineId) line.key(), Function.identity()));
    }
}
