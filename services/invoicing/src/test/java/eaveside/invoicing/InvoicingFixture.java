package eaveside.invoicing;

import eaveside.catalog.SaveServiceLine;
import eaveside.catalog.ServiceLine;
import eaveside.catalog.SetTax;
import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxCode;
import eaveside.catalog.TaxSetting;
import eaveside.customers.Address;
import eaveside.customers.Customer;
import eaveside.customers.CustomerType;
import eaveside.customers.SaveCustomer;
import eaveside.kernel.CustomerId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Money;
import eaveside.kernel.PaymentId;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.ledger.Company;
import eaveside.ledger.FoundCompany;
import eaveside.ledger.Posted;
import eaveside.testing.Bench;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.joda.money.CurrencyUnit;

/** A founded company with customers, service lines and tax settings, and the small language of invoicing's tests. */
final class InvoicingFixture {
    static final UserId OFFICE = UserId.next();
    static final LocalDate DAY = LocalDate.of(2026, 2, 10);
    static final TaxCode EXEMPT = new TaxCode("EXEMPT");

    final Bench bench;
    final CurrencyUnit currency;
    final ServiceLineId windows;
    final ServiceLineId arrays;

    InvoicingFixture(Bench bench, String currency, String... rates) {
        this.bench = bench;
        this.currency = CurrencyUnit.of(currency);
        bench.employ(OFFICE.value());
        bench.get(FoundCompany.class)
                .found(new Company(
                        "Gutterby Exterior Care",
                        new Company.Address("1 Ladder Lane", "Gutterby", "", "00001", "US"),
                        "office@example.com",
                        "555-0100",
                        "",
                        currency,
                        "America/Los_Angeles",
                        Company.Measures.US,
                        LocalDate.of(2026, 1, 1)));
        windows = serviceLine("WINDOWS", "Windows");
        arrays = serviceLine("ARRAYS", "Solar arrays");
        SetTax setTax = bench.get(SetTax.class);
        setTax.set(
                new TaxSetting(EXEMPT, TaxCategory.E, Percent.of("0"), LocalDate.of(2026, 1, 1), "Exempt by the test"),
                OFFICE);
        for (String rate : rates) {
            setTax.set(
                    new TaxSetting(rate(rate), TaxCategory.S, Percent.of(rate), LocalDate.of(2026, 1, 1), ""), OFFICE);
        }
    }

    /** The tax code that stands for a rate. */
    static TaxCode rate(String rate) {
        return new TaxCode("R" + rate.replace('.', '-'));
    }

    private ServiceLineId serviceLine(String code, String name) {
        return bench.get(SaveServiceLine.class)
                .save(new ServiceLine(ServiceLineId.next(), code, name, true, 0), OFFICE)
                .id();
    }

    CustomerId customer(String name) {
        return bench.get(SaveCustomer.class)
                .save(
                        Customer.of(
                                        CustomerId.next(),
                                        name,
                                        CustomerType.HOUSEHOLD,
                                        new Address("7 Gable Row", "Gutterby", "", "00001", "US"),
                                        14)
                                .reached("", "555-0107"),
                        OFFICE)
                .id();
    }

    Money money(String amount) {
        return Money.of(currency, amount);
    }

    ItemPrice price(String amount, String base) {
        return ItemPrice.of(new UnitPrice(currency, new BigDecimal(amount), Quantity.of(base, Unit.PIECE)));
    }

    DraftLine line(ServiceLineId serviceLine, String quantity, String price, TaxCode tax, Adjustment... adjustments) {
        return line(serviceLine, quantity, price(price, "1"), tax, adjustments);
    }

    DraftLine line(
            ServiceLineId serviceLine, String quantity, ItemPrice price, TaxCode tax, Adjustment... adjustments) {
        return new DraftLine(
                InvoiceLineId.next(),
                serviceLine,
                "Work of a test",
                Quantity.of(quantity, Unit.PIECE),
                price,
                Arrays.asList(adjustments),
                tax);
    }

    /** A new draft, of no customer yet. */
    Draft content(DraftLine... lines) {
        return content(List.of(lines), List.of(), "0", "0");
    }

    Draft content(List<DraftLine> lines, List<Draft.OnDocument> adjustments, String prepaid, String rounding) {
        return new Draft(
                InvoiceId.next(),
                0,
                CustomerId.next(),
                DAY,
                "",
                "",
                lines,
                adjustments,
                money(prepaid),
                money(rounding));
    }

    InvoiceDraft draft(CustomerId customer, Draft content) {
        return bench.get(DraftInvoice.class).save(Records.with(content, "customer", customer), OFFICE);
    }

    /** The draft with the lines, adjustments and all of another. */
    InvoiceDraft edit(InvoiceDraft draft, Draft like) {
        return bench.get(DraftInvoice.class).save(version(draft, like), OFFICE);
    }

    /** The other's content as an edit of the draft. */
    static Draft version(InvoiceDraft draft, Draft like) {
        return new Draft(
                draft.id(),
                draft.version(),
                draft.customer(),
                like.serviceDate(),
                like.reference(),
                like.note(),
                like.lines(),
                like.adjustments(),
                like.prepaid(),
                like.rounding());
    }

    IssuedInvoice issue(InvoiceDraft draft) {
        return bench.get(IssueInvoice.class)
                .issue(new IssueInvoice.Issue(draft.id(), draft.version(), today(), CreditOnHand.KEEP, OFFICE));
    }

    IssuedInvoice issued(CustomerId customer, String amount) {
        return issue(draft(customer, content(line(windows, "1", amount, EXEMPT))));
    }

    Posted pay(CustomerId customer, String amount, RecordPayment.Allocation... allocations) {
        return bench.get(RecordPayment.class)
                .record(new RecordPayment.Payment(
                        PaymentId.next(),
                        customer,
                        today(),
                        money(amount),
                        PaymentMethod.CHECK,
                        "No. 1",
                        List.of(allocations),
                        true,
                        OFFICE));
    }

    RecordPayment.Allocation on(IssuedInvoice invoice, String amount) {
        return new RecordPayment.Allocation(invoice.id(), money(amount));
    }

    IssuedInvoice read(IssuedInvoice invoice) {
        return bench.get(ReadInvoices.class).invoice(invoice.id());
    }

    Money credit(CustomerId customer) {
        return bench.get(ReadPayments.class).credit(customer);
    }

    LocalDate today() {
        return bench.inTransaction(() -> bench.get(Books.class).today());
    }
}
