package eaveside.web.worklist;

import eaveside.invoicing.Aging;
import eaveside.invoicing.ReadInvoices;
import eaveside.web.View;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.List;

/** Past-due invoices only: before an invoice is, there is nothing to do about it. */
@Dependent
class PastDueInvoices implements Kind {
    @Inject
    ReadInvoices readInvoices;

    @Override
    public Waiting.Type type() {
        return Waiting.Type.MONEY;
    }

    @Override
    public long count(View view) {
        return readInvoices.pastDueInAll().invoices();
    }

    @Override
    public List<Waiting> longest(View view, int most) {
        return readInvoices
                .pastDue(null, most)
                .map(invoice -> new Waiting(
                        type(),
                        invoice.dueDate(),
                        invoice.customer(),
                        () -> view.t(
                                "worklist.invoice-past-due",
                                String.valueOf(invoice.number()),
                                invoice.customerName(),
                                view.shortDate(invoice.dueDate()),
                                view.t("invoices.aging", Aging.Bucket.of(invoice.dueDate(), view.today()))),
                        invoice.open(),
                        "/invoices/" + invoice.id(),
                        "worklist.follow-up"))
                .rows();
    }
}
