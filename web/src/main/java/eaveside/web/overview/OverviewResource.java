package eaveside.web.overview;

import eaveside.invoicing.ReadPayments;
import eaveside.kernel.Money;
import eaveside.ledger.Books;
import eaveside.ledger.ReadLedger;
import eaveside.margins.LineTrend;
import eaveside.margins.MarginComparison;
import eaveside.margins.MarginReport;
import eaveside.margins.MarginRow;
import eaveside.margins.Period;
import eaveside.margins.ReadMargins;
import eaveside.visits.ReadVisits;
import eaveside.visits.ReadVisits.LaborMinutes;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.charts.Trend;
import eaveside.web.forms.PageResource;
import eaveside.web.margins.Opens;
import eaveside.web.security.Roles;
import eaveside.worklist.DueTotal;
import eaveside.worklist.DueType;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The owner's first page. */
@Path("/overview")
@Dependent
@RolesAllowed(Roles.OWNER)
public class OverviewResource extends PageResource {
    private static final int MONTHS = 12;

    /** So many service lines are told of, those that changed most. */
    private static final int TOLD = 3;

    @Inject
    ReadMargins readMargins;

    @Inject
    ReadPayments readPayments;

    @Inject
    ReadVisits readVisits;

    @Inject
    ReadLedger readLedger;

    @Inject
    Books books;

    /** A figure now, in the span before and a year ago. */
    public record Three<T>(T now, T before, T lastYear) {}

    /**
     * @param  reports   revenue and margin of all lines
     * @param  received  cash in
     * @param  labor     of the visits completed
     * @param  pastDue   today, whatever span is shown
     * @param  notBilled likewise: to decide, to bill and drafted, in sales value
     * @param  trends    of the last twelve months
     * @param  changes   by line, what changed most at first
     */
    public record OverviewPage(
            Compared span,
            Three<MarginReport> reports,
            Three<Money> received,
            Three<LaborMinutes> labor,
            Money pastDue,
            Money notBilled,
            List<LineTrend> trends,
            Trend chart,
            List<MarginComparison.Line> changes,
            Money noChargeChange,
            Opens opens)
            implements Page {
        public MarginRow total() {
            return reports.now().total();
        }
    }

    /**
     * @param  span  {@code quarter}, or anything else for a month
     * @param  month one in the span, such as {@code 2026-11}; anything else for today's
     */
    @GET
    @Transactional
    public OverviewPage overview(
            @QueryParam("span") @DefaultValue("month") String span,
            @QueryParam("month") @DefaultValue("") String month) {
        View view = viewer.page();
        LocalDate today = books.today();
        YearMonth shown = month(month, YearMonth.from(today));
        Compared compared = Compared.of(span.equals("quarter"), shown, today);
        Three<MarginReport> reports = new Three<>(
                readMargins.margin(compared.now()),
                readMargins.margin(compared.before()),
                readMargins.margin(compared.lastYear()));
        List<LineTrend> trends =
                readMargins.trend(YearMonth.from(compared.whole().to()), MONTHS);
        Map<DueType, DueTotal> due = view.due();
        return new OverviewPage(
                compared,
                reports,
                new Three<>(received(compared.now()), received(compared.before()), received(compared.lastYear())),
                new Three<>(labor(compared.now()), labor(compared.before()), labor(compared.lastYear())),
                amount(due, DueType.PAST_DUE),
                amount(due, DueType.DECIDE, DueType.BILL, DueType.DRAFT),
                trends,
                Trend.of(trends, initials(view, trends)),
                changes(reports),
                reports.now()
                        .total()
                        .noCharge()
                        .amount()
                        .minus(reports.before().total().noCharge().amount()),
                new Opens(readLedger.accountsInRoles()));
    }

    private static List<MarginComparison.Line> changes(Three<MarginReport> reports) {
        return new MarginComparison(reports.now(), reports.before())
                .lines().stream()
                        .filter(line -> !line.marginChange().isZero())
                        .sorted(Comparator.comparing((MarginComparison.Line line) ->
                                        line.marginChange().amount().abs())
                                .reversed())
                        .limit(TOLD)
                        .toList();
    }

    private static List<String> initials(View view, List<LineTrend> trends) {
        return Trend.months(trends).stream()
                .map(month -> month.getMonth().getDisplayName(TextStyle.SHORT, view.locale()))
                .toList();
    }

    private Money received(Period period) {
        return readPayments.received(period.from(), period.to());
    }

    private LaborMinutes labor(Period period) {
        return readVisits.labor(period.from(), period.to());
    }

    private Money amount(Map<DueType, DueTotal> due, DueType... types) {
        Money amount = books.zero();
        for (DueType type : types) {
            DueTotal total = due.get(type);
            amount = total == null ? amount : amount.plus(total.amount());
        }
        return amount;
    }

    private static YearMonth month(@Nullable String text, YearMonth otherwise) {
        try {
            YearMonth month = text == null || text.isEmpty() ? otherwise : YearMonth.parse(text);
            return month.getYear() < 2000 || month.getYear() > 2199 ? otherwise : month;
        } catch (DateTimeException noMonth) {
            return otherwise;
        }
    }
}
