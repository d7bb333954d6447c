package eaveside.demo;

import eaveside.invoicing.ApplyCredit;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.PaymentMethod;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.RecordPayment;
import eaveside.invoicing.ReversePayment;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.PaymentId;
import eaveside.ledger.ReverseDocument;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.time.LocalTime;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/** Money in: on time, late, in parts, too much, bounced, or not at all. */
@Dependent
class CustomerPayments {
    private static final List<PaymentMethod> METHODS = List.of(
            PaymentMethod.CARD,
            PaymentMethod.BANK_TRANSFER,
            PaymentMethod.CHECK,
            PaymentMethod.CARD,
            PaymentMethod.CASH);

    private static final int BOUNCED = 20;
    private static final Set<Integer> OVERPAID = Set.of(8, 24, 57, 90, 124);

    private final RecordPayment recordPayment;
    private final ReversePayment reversePayment;
    private final ApplyCredit applyCredit;
    private final ReadInvoices readInvoices;
    private final Map<CustomerId, Money> credit = new HashMap<>();
    private int expected;

    @Inject
    CustomerPayments(
            RecordPayment recordPayment,
            ReversePayment reversePayment,
            ApplyCredit applyCredit,
            ReadInvoices readInvoices) {
        this.recordPayment = recordPayment;
        this.reversePayment = reversePayment;
        this.applyCredit = applyCredit;
        this.readInvoices = readInvoices;
    }

    /** Notes how the invoice will be paid. */
    void expect(Scene scene, IssuedInvoice invoice) {
        InvoiceId id = invoice.id();
        Dice dice = scene.dice();
        expected++;
        useCredit(scene, invoice);
        int term = (int) (invoice.dueDate().toEpochDay() - invoice.date().toEpochDay());
        int habit = dice.between(1, 100);
        if (expected == BOUNCED) {
            noteAfterDays(scene, 4, () -> bounce(scene, id));
            noteAfterDays(scene, 15, () -> payAll(scene, id));
        } else if (OVERPAID.contains(expected)) {
            noteAfterDays(scene, dice.between(3, 9), () -> payTooMuch(scene, id));
        } else if (habit <= 58) {
            noteAfterDays(scene, dice.between(2, 12), () -> payAll(scene, id));
        } else if (habit <= 75) {
            noteAfterDays(scene, term + dice.between(-2, 6), () -> payAll(scene, id));
        } else if (habit <= 84) {
            noteAfterDays(scene, 8, () -> payHalf(scene, id));
            noteAfterDays(scene, dice.between(27, 36), () -> payAll(scene, id));
        } else if (habit <= 88) {
            noteAfterDays(scene, dice.between(3, 9), () -> payTooMuch(scene, id));
        } else if (habit <= 96) {
            noteAfterDays(scene, term + dice.between(20, 45), () -> payAll(scene, id));
        }
    }

    private static void noteAfterDays(Scene scene, int days, Runnable what) {
        scene.agenda().note(scene.day().plusDays(Math.max(1, days)), LocalTime.of(12, 20), what);
    }

    private void payAll(Scene scene, InvoiceId id) {
        pay(scene, readInvoices.invoice(id), BigDecimal.ONE, Dollars.whole(0));
    }

    private void payHalf(Scene scene, InvoiceId id) {
        pay(scene, readInvoices.invoice(id), new BigDecimal("0.5"), Dollars.whole(0));
    }

    private void payTooMuch(Scene scene, InvoiceId id) {
        pay(scene, readInvoices.invoice(id), BigDecimal.ONE, Dollars.whole(25));
    }

    /** A share of what is open, and something beyond it. */
    private PaymentId pay(Scene scene, IssuedInvoice invoice, BigDecimal share, Money beyond) {
        PaymentId payment = PaymentId.next();
        Money amount = invoice.open().times(share);
        if (invoice.creditMemo() == null && amount.isPositive()) {
            PaymentMethod method = scene.dice().oneOf(METHODS);
            recordPayment.record(new RecordPayment.Payment(
                    payment,
                    invoice.customer(),
                    scene.day(),
                    amount.plus(beyond),
                    method,
                    method == PaymentMethod.CHECK ? "Check " + scene.dice().between(200, 990) : "",
                    List.of(new RecordPayment.Allocation(invoice.id(), amount)),
                    true,
                    scene.staff().biller()));
            credit.merge(invoice.customer(), beyond, Money::plus);
        }
        return payment;
    }

    private void bounce(Scene scene, InvoiceId id) {
        PaymentId payment = pay(scene, readInvoices.invoice(id), BigDecimal.ONE, Dollars.whole(0));
        noteAfterDays(
                scene,
                3,
                () -> reversePayment.reverse(new ReverseDocument.Reversal(
                        DocumentId.next(),
                        new DocumentId(payment.value()),
                        scene.day(),
                        "Check came back unpaid",
                        scene.staff().biller())));
    }

    boolean hasCredit(CustomerId customer) {
        return credit.getOrDefault(customer, Dollars.whole(0)).isPositive();
    }

    /** What the customer has to the good goes on the next invoice. */
    private void useCredit(Scene scene, IssuedInvoice invoice) {
        Money has = credit.getOrDefault(invoice.customer(), Dollars.whole(0));
        if (has.isPositive()) {
            Money amount = has.compareTo(invoice.open()) < 0 ? has : invoice.open();
            applyCredit.apply(new ApplyCredit.Apply(
                    DocumentId.next(),
                    invoice.id(),
                    amount,
                    scene.day(),
                    scene.staff().biller()));
            credit.put(invoice.customer(), has.minus(amount));
        }
    }

    /** One customer would rather have the money back. */
    void refundOne(Scene scene) {
        credit.entrySet().stream()
                .filter(entry -> entry.getValue().isPositive())
                .min(Comparator.comparing(entry -> entry.getKey().value()))
                .ifPresent(entry -> {
                    Money amount = Objects.requireNonNull(entry.getValue());
                    recordPayment.refund(new RecordPayment.Refund(
                            PaymentId.next(),
                            entry.getKey(),
                            scene.day(),
                            amount,
                            PaymentMethod.CHECK,
                            "At the customer's wish",
                            scene.staff().biller()));
                    entry.setValue(Dollars.whole(0));
                });
    }
}
