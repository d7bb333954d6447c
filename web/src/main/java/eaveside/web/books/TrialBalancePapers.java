package eaveside.web.books;

import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.ledger.TrialBalance;
import eaveside.reports.Papers;
import eaveside.reports.TrialBalancePaper;
import eaveside.web.Csv;
import eaveside.web.Texts;
import eaveside.web.forms.Respond;
import eaveside.web.papers.Letterheads;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The trial balance on paper and as a file: the figures of the page, no sums of its own. */
@Shared
public class TrialBalancePapers {
    @Inject
    Letterheads letterheads;

    @Inject
    Papers papers;

    Response pdf(TrialBalance balance) {
        return Respond.inline(papers.trialBalance(paper(balance)), Papers.PDF, name(balance) + ".pdf");
    }

    private TrialBalancePaper paper(TrialBalance balance) {
        return new TrialBalancePaper(
                letterheads.current(),
                balance.from(),
                balance.to(),
                balance.accounts().stream().map(TrialBalancePapers::line).toList(),
                sides(balance.opening()),
                sides(balance.change()),
                sides(balance.closing()),
                Texts.of(Locale.ENGLISH, "books.trial-balance.note"));
    }

    private static TrialBalancePaper.Line line(TrialBalance.Row row) {
        String type =
                Texts.of(Locale.ENGLISH, "books.accounts.type." + row.type().name());
        return new TrialBalancePaper.Line(
                row.account().value(), row.name(), type, row.opening(), row.change(), row.closing());
    }

    private static TrialBalancePaper.Sides sides(TrialBalance.Sides sides) {
        return new TrialBalancePaper.Sides(sides.debit(), sides.credit());
    }

    Response csv(TrialBalance balance) {
        List<List<String>> rows = new ArrayList<>();
        for (TrialBalance.Row row : balance.accounts()) {
            Stream<String> amounts = Stream.of(row.opening(), row.change(), row.closing())
                    .flatMap(amount -> Stream.of(debit(amount), debit(amount.negated())));
            rows.add(cells(row.account().value(), row.name(), row.type().name(), amounts));
        }
        Stream<String> totals = Stream.of(balance.opening(), balance.change(), balance.closing())
                .flatMap(sides -> Stream.of(sides.debit(), sides.credit()))
                .map(TrialBalancePapers::plain);
        rows.add(cells("", Texts.of(Locale.ENGLISH, "common.total"), "", totals));
        Stream<String> columns = Stream.of("opening", "change", "closing")
                .flatMap(column -> Stream.of(column + " debit", column + " credit"));
        return Csv.download(name(balance), cells("account", "name", "type", columns), rows);
    }

    private static List<String> cells(String account, String name, String type, Stream<String> amounts) {
        return Stream.concat(Stream.of(account, name, type), amounts).toList();
    }

    /** The cell in a column of debits; what an amount has among the credits is the debit of its opposite. */
    private static String debit(Money amount) {
        return amount.isPositive() ? plain(amount) : "";
    }

    private static String plain(Money amount) {
        return amount.amount().toPlainString();
    }

    private static String name(TrialBalance balance) {
        return "trial-balance-" + balance.from() + "-" + balance.to();
    }
}
