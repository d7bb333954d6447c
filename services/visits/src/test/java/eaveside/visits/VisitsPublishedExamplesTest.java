package eaveside.visits;

import static eaveside.visits.VisitsFixture.TODAY;
import static eaveside.visits.VisitsFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.costing.Effort;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.CostType;
import eaveside.testing.Bench;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

@Tag("database")
class VisitsPublishedExamplesTest {
    @RegisterExtension
    static final Bench bench = new Bench();

    /**
     * Source: Franklin, Graybeal and Cooper, Principles of Accounting, Volume 2: Managerial Accounting (OpenStax, 2019),
     * §4.8, a service job: parts 42 + labor 3 h × 25 = 75 + overhead 75 = cost 192. Overhead is applied at 25 per labor
     * hour, which makes the source's 75.
     */
    @Test
    void service_job_of_the_textbook() {
        VisitsFixture company = new VisitsFixture(bench);
        Visit visit = bench.get(ScheduleVisit.class)
                .schedule(Scheduling.of(
                        VisitId.next(),
                        company.customer,
                        company.site,
                        TODAY,
                        List.of(company.technician),
                        List.of(new ScheduledLine(
                                VisitLineId.next(), company.skylightWash, company.skylights, VisitsFixture.pieces(6))),
                        "",
                        company.office));
        JobSheet sheet = company.sheet(visit)
                .parts(1)
                .effort(new Effort(180, 0, 0, Quantity.zero(Unit.MILE)))
                .build();
        bench.get(SignOffVisit.class).signOff(sheet);
        assertEquals(
                Map.of(
                        CostType.CONSUMABLES, usd("42.00"),
                        CostType.LABOR, usd("75.00"),
                        CostType.OVERHEAD, usd("75.00")),
                bench.get(ReadSheets.class).costOf(sheet.id()).stream()
                        .collect(Collectors.toMap(ReadSheets.Cost::type, ReadSheets.Cost::amount)));
        assertEquals(usd("192.00"), company.balance(AccountRole.WORK_IN_PROGRESS, visit.id()));
        bench.verifyBooks();
    }
}
