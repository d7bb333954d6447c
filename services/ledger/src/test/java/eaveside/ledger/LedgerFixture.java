package eaveside.ledger;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Money;
import eaveside.kernel.UserId;
import eaveside.testing.Bench;
import java.time.LocalDate;
import java.util.List;
import org.joda.money.CurrencyUnit;

/** A founded company and the small language of the ledger's tests. */
final class LedgerFixture {
    static final UserId OWNER = UserId.next();

    private LedgerFixture() {}

    static void found(Bench bench) {
        bench.employ(OWNER.value());
        bench.get(FoundCompany.class).found(company("USD"));
    }

    static Company company(String currency) {
        return new Company(
                "Gutterby Exterior Care",
                new Company.Address("1 Ladder Lane", "Gutterby", "", "00001", "US"),
                "office@example.com",
                "555-0100",
                "",
                currency,
                "America/Los_Angeles",
                Company.Measures.US,
                LocalDate.of(2026, 1, 1));
    }

    static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, amount);
    }

    static Posted journal(Bench bench, LocalDate date, PostJournal.Line... lines) {
        return bench.get(PostJournal.class)
                .post(new PostJournal.Journal(
                        DocumentId.next(), PostJournal.Type.JOURNAL, date, "Journal of a test", List.of(lines), OWNER));
    }

    static PostJournal.Line debit(String account, String amount) {
        return PostJournal.Line.debit(new AccountCode(account), usd(amount));
    }

    static PostJournal.Line credit(String account, String amount) {
        return PostJournal.Line.credit(new AccountCode(account), usd(amount));
    }
}
