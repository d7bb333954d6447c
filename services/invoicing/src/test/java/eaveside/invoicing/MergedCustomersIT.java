package eaveside.invoicing;

import static eaveside.invoicing.InvoicingFixture.OFFICE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.customers.MergeCustomers;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.EntryFilter;
import eaveside.ledger.ReadLedger;
import eaveside.testing.Bench;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Two customers who turn out to be one: what was posted stays as it is, and one account reads and pays all of it. */
class MergedCustomersIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    static InvoicingFixture at;

    @BeforeAll
    static void found() {
        at = new InvoicingFixture(bench, "USD");
    }

    @AfterEach
    void verify() {
        bench.verifyBooks();
    }

    private static void merge(CustomerId from, CustomerId into) {
        bench.get(MergeCustomers.class).merge(new MergeCustomers.Merge(from, into, OFFICE));
    }

    private static Object posted() {
        return bench.value(
                "select md5(string_agg(e::text, '|' order by document_id, line)) || count(*) from money_entry e");
    }

    @Test
    void one_payment_pays_invoices_of_both_and_credit_goes_along() {
        CustomerId kept = at.customer("Both Kept");
        CustomerId merged = at.customer("Both Merged");
        IssuedInvoice of = at.issued(merged, "100.00");
        IssuedInvoice and = at.issued(kept, "40.00");
        at.pay(merged, "30.00");
        at.pay(kept, "5.00");
        Object before = posted();

        merge(merged, kept);

        assertEquals(before, posted(), "no entry changes");
        assertEquals(at.money("35.00"), at.credit(kept));
        assertEquals(at.money("35.00"), at.credit(merged));
        ReadInvoices invoices = bench.get(ReadInvoices.class);
        for (CustomerId id : List.of(kept, merged)) {
            assertEquals(2, invoices.outstandingOf(id).size());
            assertEquals(2, invoices.ofCustomer(id, null, 10).rows().size());
            assertEquals(
                    2,
                    bench.get(ReadPayments.class).payments(id, null, 10).rows().size());
        }
        assertEquals(
                2,
                invoices.find("both kept", ReadInvoices.Which.ALL, null, null, 10)
                        .rows()
                        .size());
        assertEquals(
                List.of("Both Kept", "Both Kept"),
                bench.get(ReadPayments.class).payments(kept, null, 10).rows().stream()
                        .map(ReadPayments.Row::customerName)
                        .toList());

        at.pay(kept, "140.00", at.on(of, "100.00"), at.on(and, "40.00"));

        assertEquals(List.of(), invoices.outstandingOf(kept));
        assertEquals("Both Merged", at.read(of).customerName(), "an issued invoice keeps its name");
    }

    @Test
    void credit_of_the_one_pays_an_invoice_of_the_other_and_back() {
        CustomerId kept = at.customer("Credit Kept");
        CustomerId merged = at.customer("Credit Merged");
        IssuedInvoice invoice = at.issued(merged, "60.00");
        at.pay(kept, "80.00");
        merge(merged, kept);

        bench.get(ApplyCredit.class)
                .apply(new ApplyCredit.Apply(DocumentId.next(), invoice.id(), at.money("60.00"), at.today(), OFFICE));

        assertEquals(at.money("20.00"), at.credit(merged));
        assertEquals(
                at.money("0"),
                bench.inTransaction(() -> bench.get(ReadLedger.class)
                        .total(new EntryFilter(
                                null,
                                null,
                                List.of(AccountRole.RECEIVABLES),
                                null,
                                false,
                                null,
                                List.of(kept, merged),
                                null,
                                false))));
        assertThrows(
                InvoiceRefusal.OtherCustomer.class,
                () -> at.pay(at.customer("Credit Other"), "1.00", at.on(at.issued(merged, "1.00"), "1.00")));
    }
}
