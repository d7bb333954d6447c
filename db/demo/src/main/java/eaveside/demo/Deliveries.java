package eaveside.demo;

import eaveside.kernel.Money;

/** The supplier's side: serial numbers run on, and what was delivered is billed later. */
final class Deliveries {
    private int serial = 1_000;
    private Money notInvoiced = Dollars.whole(0);

    int nextSerial() {
        return ++serial;
    }

    void delivered(Money cost) {
        notInvoiced = notInvoiced.plus(cost);
    }

    /** What the supplier's next bill comes to. */
    Money bill() {
        Money amount = notInvoiced;
        notInvoiced = Dollars.whole(0);
        return amount;
    }
}
