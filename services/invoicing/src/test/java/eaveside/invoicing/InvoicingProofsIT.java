package eaveside.invoicing;

import static eaveside.invoicing.InvoicingFixture.rate;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.CustomerId;
import eaveside.ledger.Posted;
import eaveside.schema.BooksProof;
import eaveside.testing.Bench;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The proofs can fail: each planted fault is found, by name, and gone again once it is mended. */
class InvoicingProofsIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static IssuedInvoice invoice;
    private static IssuedInvoice later;
    private static Posted payment;

    @BeforeAll
    static void an_invoice_paid_in_part() {
        InvoicingFixture fixture = new InvoicingFixture(bench, "USD", "8.25");
        CustomerId customer = fixture.customer("Dormer Bakery");
        invoice = fixture.issue(
                fixture.draft(customer, fixture.content(fixture.line(fixture.windows, "2", "50", rate("8.25")))));
        payment = fixture.pay(customer, "40", fixture.on(invoice, "30"));
        bench.clock().forward(Duration.ofDays(1));
        later = fixture.issued(customer, "20");
    }

    @AfterEach
    void mended() {
        bench.verifyBooks();
    }

    private static String failing() throws SQLException {
        try (Connection connection = bench.database().asOwner().getConnection()) {
            List<BooksProof.Result> results = BooksProof.run(connection);
            return results.stream()
                    .filter(r -> !r.holds())
                    .map(BooksProof.Result::toString)
                    .collect(Collectors.joining("\n"));
        }
    }

    private static String faultOf(String table, String plant, String mend) throws SQLException {
        bench.execute("alter table " + table + " disable trigger user");
        assertEquals(1, bench.execute(plant));
        String failing = failing();
        assertEquals(1, bench.execute(mend));
        bench.execute("alter table " + table + " enable trigger user");
        return failing;
    }

    @Test
    void an_open_balance_that_nothing_explains() throws SQLException {
        String failing = faultOf(
                "invoice",
                "update invoice set open = open - 1 where id = '" + invoice.id() + "'",
                "update invoice set open = open + 1 where id = '" + invoice.id() + "'");
        assertTrue(failing.contains("receivables = open invoices"), failing);
        assertTrue(failing.contains("open balance = its gross total less what settles it"), failing);
        assertTrue(failing.contains("invoice " + invoice.number() + ":"), failing);
    }

    @Test
    void credit_that_nobody_paid() throws SQLException {
        String failing = faultOf(
                "customer_account",
                "update customer_account set credit = credit + 1",
                "update customer_account set credit = credit - 1");
        assertTrue(failing.contains("customer credit = unmatched money"), failing);
    }

    @Test
    void tax_that_was_not_posted() throws SQLException {
        String failing = faultOf(
                "invoice_tax",
                "update invoice_tax set tax = tax + 1 where invoice_id = '" + invoice.id() + "'",
                "update invoice_tax set tax = tax - 1 where invoice_id = '" + invoice.id() + "'");
        assertTrue(failing.contains("its entries on TAX_PAYABLE"), failing);
        assertTrue(failing.contains("every invoice's totals = the sums"), failing);
    }

    @Test
    void a_payment_that_is_not_its_documents() throws SQLException {
        String failing =
                faultOf("payment", "update payment set number = number + 1", "update payment set number = number - 1");
        assertTrue(failing.contains("every posted invoice, credit memo and payment has its document"), failing);
    }

    @Test
    void an_invoice_before_its_work() throws SQLException {
        String failing = faultOf(
                "invoice",
                "update invoice set billed_sheet_id = '" + later.id() + "' where id = '" + invoice.id() + "'",
                "update invoice set billed_sheet_id = null where id = '" + invoice.id() + "'");
        assertTrue(failing.contains("no invoice counts before the sheet"), failing);
    }

    @Test
    void a_settlement_before_its_invoice() throws SQLException {
        String failing = faultOf(
                "settlement",
                "insert into settlement values ('" + payment.id() + "', '" + later.id() + "', 1)",
                "delete from settlement where invoice_id = '" + later.id() + "'");
        assertTrue(failing.contains("nothing settles an invoice before"), failing);
    }

    @Test
    void credit_below_zero_on_a_day() throws SQLException {
        String entry = " from account a where a.code = e.account_code and a.role = 'CUSTOMER_CREDIT'";
        String failing = faultOf(
                "money_entry",
                "update money_entry e set amount = -amount" + entry,
                "update money_entry e set amount = -amount" + entry);
        assertTrue(failing.contains("no customer's credit is below zero"), failing);
    }
}
