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

    static Posted journal(Bench bench, LocalDate date, Entry... entries) {
        return bench.get(PostJournal.class)
                .post(new PostJournal.Journal(
                        DocumentId.next(), false, date, "Journal of a test", List.of(entries), OWNER));
    }

    static Entry debit(String account, String amount) {
        return Entry.debit(new AccountCode(account), usd(amount));
    }

    static Entry credit(String account, String amount) {
        return Entry.credit(new AccountCode(account), usd(amount));
    }
}
