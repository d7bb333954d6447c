package eaveside.margins;

import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import java.time.YearMonth;
import java.util.List;

/** What a service line earned month by month, the earliest first; a month without entries has zeros. */
public record LineTrend(ServiceLineId line, String name, List<Month> months) {
    public LineTrend {
        months = List.copyOf(months);
    }

    /**
     * A month.
     *
     * @param  revenue invoiced, net of tax and of credit memos
     * @param  margin  revenue less the cost of services
     */
    public record Month(YearMonth month, Money revenue, Money margin) {}
}
