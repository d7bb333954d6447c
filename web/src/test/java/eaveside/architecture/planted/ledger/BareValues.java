package eaveside.architecture.planted.ledger;

import java.math.BigDecimal;
import java.util.UUID;

/** Planted: money, quantities and ids without their types; a number of lines is a plain number. */
public record BareValues(
        UUID customer,
        String invoiceId,
        BigDecimal paid,
        long amount,
        int quantity,
        double weight,
        String rate,
        int lines) {}
