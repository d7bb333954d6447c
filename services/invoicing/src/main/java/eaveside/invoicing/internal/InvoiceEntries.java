package eaveside.invoicing.internal;

import eaveside.invoicing.Adjustment;
import eaveside.invoicing.DraftLine;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceTotals.TaxSubtotal;
import eaveside.invoicing.LineOrigin;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Decision;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Entry;
import eaveside.ledger.ReadBalances.VisitBalance;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * What an invoice posts: receivables against revenue by service line, tax and rounding; what the customer's credit pays of it at
 * once; and, where it bills a visit, the visit's work in progress into cost of services, and the value of what was noCharge
 * as a memorandum pair.
 */
@Decision
public final class InvoiceEntries {
    private final InvoiceDraft draft;
    private final DraftReckoning reckoning;
    private final List<Entry> entries = new ArrayList<>();

    private InvoiceEntries(InvoiceDraft draft, DraftReckoning reckoning) {
        this.draft = draft;
        this.reckoning = reckoning;
    }

    /** @param  workInProgress what the billed visit has on that account; empty for a freely written invoice */
    public static List<Entry> of(InvoiceDraft draft, DraftReckoning reckoning, List<VisitBalance> workInProgress) {
        InvoiceEntries entries = new InvoiceEntries(draft, reckoning);
        entries.receivables();
        entries.revenue();
        entries.tax();
        VisitId visit = draft.visit();
        if (visit != null) {
            entries.cost(visit, workInProgress);
            entries.noCharge(visit);
        }
        return entries.entries;
    }

    private void receivables() {
        CustomerId customer = draft.customer();
        Money prepaid = draft.totals().prepaid();
        Money rounding = draft.totals().rounding();
        add(AccountRole.RECEIVABLES, draft.totals().gross().plus(rounding), e -> e.of(customer));
        add(AccountRole.ROUNDING, rounding.negated(), e -> e.of(customer));
        add(AccountRole.CUSTOMER_CREDIT, prepaid, e -> e.of(customer).noted("Credit taken"));
        add(AccountRole.RECEIVABLES, prepaid.negated(), e -> e.of(customer).noted("Credit taken"));
    }

    private void revenue() {
        RevenueSplit.split(
                        reckoning.parts(draft.content(), draft.origins()),
                        reckoning.input().adjustments())
                .forEach((share, amount) -> add(
                        AccountRole.REVENUE,
                        amount.negated(),
                        e -> e.on(share.serviceLine(), draft.visit(), draft.customer())
                                .cameFrom(share.finding())));
    }

    private void tax() {
        for (TaxSubtotal subtotal : draft.totals().breakdown()) {
            add(
                    AccountRole.TAX_PAYABLE,
                    subtotal.tax().negated(),
                    e -> e.on(null, draft.visit(), draft.customer())
                            .noted(subtotal.rate() + " of " + subtotal.taxable()));
        }
    }

    private void cost(VisitId visit, List<VisitBalance> workInProgress) {
        for (VisitBalance balance : workInProgress) {
            if (balance.costType() == null) {
                throw new IllegalStateException("work in progress without a type of cost on visit " + visit);
            }
            Entry cost = Entry.debit(AccountRole.COST_OF_SERVICES, balance.amount())
                    .on(balance.serviceLine(), visit, draft.customer())
                    .as(balance.costType());
            entries.add(cost);
            entries.add(Entry.credit(AccountRole.WORK_IN_PROGRESS, balance.amount())
                    .on(balance.serviceLine(), visit, draft.customer())
                    .as(balance.costType()));
        }
    }

    private void noCharge(VisitId visit) {
        Map<ServiceLineId, Money> noCharge = new LinkedHashMap<>();
        for (int i = 0; i < draft.content().lines().size(); i++) {
            DraftLine line = draft.content().lines().get(i);
            LineOrigin origin = draft.origins().get(line.id());
            if (origin != null && origin.noCharge()) {
                for (Adjustment allowance : reckoning.input().lines().get(i).adjustments()) {
                    noCharge.merge(line.serviceLine(), allowance.amount(), Money::plus);
                }
            }
        }
        noCharge.forEach((line, value) -> {
            add(AccountRole.NO_CHARGE_GIVEN, value, e -> e.on(line, visit, draft.customer()));
            add(AccountRole.NO_CHARGE_CONTRA, value.negated(), e -> e.on(line, visit, draft.customer()));
        });
    }

    private void add(AccountRole account, Money debit, UnaryOperator<Entry> dimensions) {
        if (!debit.isZero()) {
            entries.add(dimensions.apply(Entry.debit(account, debit)));
        }
    }
}
