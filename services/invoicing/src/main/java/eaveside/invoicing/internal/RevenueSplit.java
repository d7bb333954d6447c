package eaveside.invoicing.internal;

import eaveside.invoicing.InvoiceInput.DocumentAdjustment;
import eaveside.invoicing.TaxRate;
import eaveside.kernel.Decision;
import eaveside.kernel.FindingId;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Whose revenue an invoice's net total is: each line's net goes to its service line, each allowance or charge on the
 * whole invoice is shared, within its tax category and rate, over the service lines by their nets, cents by largest
 * remainder. The shares add up to the invoice's net total to the cent.
 */
@Decision
final class RevenueSplit {
    private RevenueSplit() {}

    /** Revenue is kept apart by service line, and by the finding that the work's quote came from. */
    public record Share(ServiceLineId serviceLine, @Nullable FindingId finding) {}

    /** A line's net amount with where it belongs. */
    public record Part(Share share, TaxRate tax, Money net) {}

    /**
     * Parts that count below zero weigh nothing. An adjustment at a rate that no line has is shared over all lines;
     * where nothing has weight, evenly.
     */
    public static Map<Share, Money> split(List<Part> parts, List<DocumentAdjustment> adjustments) {
        Map<Share, Money> revenue = sums(parts);
        for (DocumentAdjustment adjustment : adjustments) {
            List<Part> ofRate =
                    parts.stream().filter(p -> p.tax().equals(adjustment.tax())).toList();
            Map<Share, Money> weights = sums(ofRate.isEmpty() ? parts : ofRate);
            List<Share> shares = List.copyOf(weights.keySet());
            List<Money> split = adjustment
                    .adjustment()
                    .signed()
                    .split(weights.values().stream()
                            .map(weight -> weight.amount().max(BigDecimal.ZERO))
                            .toList());
            for (int i = 0; i < shares.size(); i++) {
                revenue.merge(shares.get(i), split.get(i), Money::plus);
            }
        }
        return revenue;
    }

    private static Map<Share, Money> sums(List<Part> parts) {
        Map<Share, Money> sums = new LinkedHashMap<>();
        parts.forEach(p -> sums.merge(p.share(), p.net(), Money::plus));
        return sums;
    }
}
