package eaveside.ledger;

import static eaveside.ledger.LedgerFixture.credit;
import static eaveside.ledger.LedgerFixture.debit;
import static eaveside.ledger.LedgerFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.kernel.Money;
import eaveside.testing.Bench;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

@Tag("database")
class LedgerPublishedExamplesTest {
    @RegisterExtension
    static final Bench bench = new Bench();

    /**
     * Source: Franklin, Graybeal and Cooper, Principles of Accounting, Volume 1: Financial Accounting (OpenStax, 2019),
     * §3.6, trial balance: cash 24,800, receivables 1,200, supplies 500, equipment 3,500, dividends 100, salaries 3,600,
     * utilities 300; payables 500, unearned 4,000, stock 20,000, revenue 9,500; both sides 34,000. Posted as journals on
     * accounts of the company's own.
     */
    @Test
    void trial_balance_of_the_textbook() {
        LedgerFixture.found(bench);
        AddAccount add = bench.get(AddAccount.class);
        add.add(new NewAccount(new AccountCode("1010"), "Cash", AccountType.ASSET), LedgerFixture.OWNER);
        add.add(new NewAccount(new AccountCode("1110"), "Accounts receivable", AccountType.ASSET), LedgerFixture.OWNER);
        add.add(new NewAccount(new AccountCode("1210"), "Supplies", AccountType.ASSET), LedgerFixture.OWNER);
        add.add(new NewAccount(new AccountCode("1510"), "Equipment", AccountType.ASSET), LedgerFixture.OWNER);
        add.add(
                new NewAccount(new AccountCode("2010"), "Accounts payable", AccountType.LIABILITY),
                LedgerFixture.OWNER);
        add.add(
                new NewAccount(new AccountCode("2300"), "Unearned revenue", AccountType.LIABILITY),
                LedgerFixture.OWNER);
        add.add(new NewAccount(new AccountCode("3010"), "Common stock", AccountType.EQUITY), LedgerFixture.OWNER);
        add.add(new NewAccount(new AccountCode("3020"), "Dividends", AccountType.EQUITY), LedgerFixture.OWNER);
        add.add(new NewAccount(new AccountCode("4010"), "Service fees", AccountType.REVENUE), LedgerFixture.OWNER);
        add.add(new NewAccount(new AccountCode("6300"), "Salaries", AccountType.EXPENSE), LedgerFixture.OWNER);
        add.add(new NewAccount(new AccountCode("6310"), "Utilities", AccountType.EXPENSE), LedgerFixture.OWNER);
        LocalDate day = LocalDate.of(2026, 1, 31);

        LedgerFixture.journal(bench, day, debit("1010", "20000"), credit("3010", "20000"));
        LedgerFixture.journal(bench, day, debit("1510", "3500"), debit("1210", "500"), credit("1010", "4000"));
        LedgerFixture.journal(bench, day, debit("1010", "4000"), credit("2300", "4000"));
        LedgerFixture.journal(bench, day, debit("1110", "1200"), debit("1010", "8300"), credit("4010", "9500"));
        LedgerFixture.journal(bench, day, debit("6300", "3600"), credit("1010", "3600"));
        LedgerFixture.journal(bench, day, debit("6310", "300"), debit("3020", "100"), credit("1010", "400"));
        LedgerFixture.journal(bench, day, debit("1010", "500"), credit("2010", "500"));

        Map<String, Money> balances = new LinkedHashMap<>();
        TrialBalance trialBalance = bench.get(ReadLedger.class).trialBalance(LocalDate.of(2026, 1, 1), day);
        for (TrialBalance.Row row : trialBalance.accounts()) {
            balances.put(row.name(), row.closing());
        }
        assertEquals(
                Map.ofEntries(
                        Map.entry("Cash", usd("24800")),
                        Map.entry("Accounts receivable", usd("1200")),
                        Map.entry("Supplies", usd("500")),
                        Map.entry("Equipment", usd("3500")),
                        Map.entry("Dividends", usd("100")),
                        Map.entry("Salaries", usd("3600")),
                        Map.entry("Utilities", usd("300")),
                        Map.entry("Accounts payable", usd("-500")),
                        Map.entry("Unearned revenue", usd("-4000")),
                        Map.entry("Common stock", usd("-20000")),
                        Map.entry("Service fees", usd("-9500"))),
                balances);
        List<Money> debits =
                balances.values().stream().filter(Money::isPositive).toList();
        assertEquals(usd("34000"), Money.sum(CurrencyUnit.USD, debits));
        assertEquals(usd("0"), Money.sum(CurrencyUnit.USD, balances.values()));
        assertEquals(new TrialBalance.Sides(usd("34000"), usd("34000")), trialBalance.closing());
        assertEquals(new TrialBalance.Sides(usd("0"), usd("0")), trialBalance.opening());
        // As of the next day the same balances have come in from before, and nothing has changed.
        TrialBalance next = bench.get(ReadLedger.class).trialBalance(day.plusDays(1), day.plusDays(1));
        assertEquals(new TrialBalance.Sides(usd("34000"), usd("34000")), next.opening());
        assertEquals(new TrialBalance.Sides(usd("0"), usd("0")), next.change());
        assertEquals(new TrialBalance.Sides(usd("34000"), usd("34000")), next.closing());
        bench.verifyBooks();
    }
}
