package eaveside.web.invoices;

import eaveside.invoicing.PaymentMethod;
import eaveside.invoicing.ReadInvoices.Row;
import eaveside.invoicing.RecordPayment.Allocation;
import eaveside.invoicing.RecordPayment.Payment;
import eaveside.kernel.CustomerId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.PaymentId;
import eaveside.kernel.UserId;
import eaveside.web.forms.Fields;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** The form of a payment: {@code pays-<invoice>} says how much of it an open invoice takes. */
final class PaymentForm {
    private static final String PAYS = "pays-";

    private final Fields fields;
    private final CurrencyUnit currency;

    PaymentForm(Fields fields, CurrencyUnit currency) {
        this.fields = fields;
        this.currency = currency;
    }

    static String field(InvoiceId invoice) {
        return PAYS + invoice;
    }

    /** Null where something in it is wrong, which is then noted at its field. */
    @Nullable
    Payment payment(List<String> names, LocalDate today, UserId by) {
        PaymentId id = new PaymentId(fields.id("id"));
        CustomerId customer = CustomerId.of(fields.typed("customer"));
        LocalDate date = fields.date("date", today);
        Money amount = fields.money("amount", currency);
        PaymentMethod method = fields.choice("method", PaymentMethod.class);
        List<Allocation> allocations = new ArrayList<>();
        for (String name : names) {
            if (name.startsWith(PAYS) && !fields.typed(name).isBlank()) {
                Money pays = fields.money(name, currency);
                Allocation allocation = pays.isZero()
                        ? null
                        : fields.made(name, () -> new Allocation(InvoiceId.of(name.substring(PAYS.length())), pays));
                if (allocation != null) {
                    allocations.add(allocation);
                }
            }
        }
        if (allocations.isEmpty() && !fields.ticked("keepAsCredit")) {
            fields.wrong("allocations", "invoices.allocations.choose");
        }
        return method == null || fields.hasErrors()
                ? null
                : fields.made(
                        "amount",
                        () -> new Payment(
                                id,
                                customer,
                                date,
                                amount,
                                method,
                                fields.optional("reference"),
                                allocations,
                                fields.ticked("keepAsCredit"),
                                by));
    }

    /** How an amount spreads over open invoices, what is due first is paid first. */
    static List<Allocation> oldestFirst(Money amount, List<Row> open) {
        List<Allocation> allocations = new ArrayList<>();
        Money left = amount;
        for (Row invoice : open) {
            Money takes = left.compareTo(invoice.open()) < 0 ? left : invoice.open();
            if (takes.isPositive()) {
                allocations.add(new Allocation(invoice.id(), takes));
                left = left.minus(takes);
            }
        }
        return allocations;
    }
}
