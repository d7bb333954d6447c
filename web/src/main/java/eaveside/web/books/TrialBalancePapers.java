package eaveside.web.books;

import eaveside.kernel.Money;
import eaveside.ledger.TrialBalance;
import eaveside.reports.TrialBalancePaper;
import eaveside.web.Csv;
import eaveside.web.Texts;
import eaveside.web.papers.Letterheads;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The trial balance on paper and as a file: the figures of the page, no sums of its own. */
@Dependent
public class TrialBalancePapers {
    @Inject
    Letterheads letterheads;

    TrialBalancePaper paper(TrialBalance balance) {
        return new TrialBalancePaper(
                letterheads.current(),
                balance.from(),
                balance.to(),
                balance.accounts().stream()
                        .map(row -> new TrialBalancePaper.Line(
                                row.account().value(),
                                row.name(),
                                Texts.of(
                                        Locale.ENGLISH,
                                        "books.accounts.type." + row.type().name()),
                                row.opening(),
                                row.change(),
                                row.closing()))
                        .toList(),
                sides(balance.opening()),
                sides(balance.change()),
                sides(balance.closing()),
                Texts.of(Locale.ENGLISH, "books.trial-balance.note"));
    }

    private static TrialBalancePaper.Sides sides(TrialBalance.Sides sides) {
        return new TrialBalancePaper.Sides(sides.debit(), sides.credit());
    }

    Response csv(TrialBalance balance) {
        List<List<String>> rows = new ArrayList<>();
        for (TrialBalance.Row row : balance.accounts()) {
            rows.add(Stream.of(
                            Stream.of(
                                    row.account().value(),
                                    row.name(),
                                    row.type().name()),
                            split(row.opening()),
                            split(row.change()),
                            split(row.closing()))
                    .flatMap(cells -> cells)
                    .toList());
        }
        rows.add(Stream.of(
                        Stream.of("", Texts.of(Locale.ENGLISH, "common.total"), ""),
                        both(balance.opening()),
                        both(balance.change()),
                        both(balance.closing()))
                .flatMap(cells -> cells)
                .toList());
        return Csv.download(
                "trial-balance-" + balance.from() + "-" + balance.to(),
                List.of(
                        "account",
                        "name",
                        "type",
                        "opening debit",
                        "opening credit",
                        "change debit",
                        "change credit",
                        "closing debit",
                        "closing credit"),
                rows);
    }

    /** An amount on the side where it belongs; nothing on either where there is none. */
    private static Stream<String> split(Money amount) {
        return Stream.of(amount.isPositive() ? plain(amount) : "", amount.isNegative() ? plain(amount.negated()) : "");
    }

    private static Stream<String> both(TrialBalance.Sides sides) {
        return Stream.of(plain(sides.debit()), plain(sides.credit()));
    }

    private static String plain(Money amount) {
        return amount.amount().toPlainString();
    }
}
