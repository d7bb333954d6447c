package eaveside.web.invoices;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What scripts send about invoices. Decimals may be numbers or texts; units are codes of UN/ECE Recommendation 20 and
 * count as pieces (C62, "one") where they are absent; tax categories are codes of UNCL 5305.
 */
public final class InvoiceBodies {
    private InvoiceBodies() {}

    /** An allowance or charge of a line. */
    public record OnLine(
            @Nullable BigDecimal amount, @Nullable String reason) {}

    /** A line to compute. */
    public record PreviewLine(
            @Nullable BigDecimal quantity,
            @Nullable String unit,
            @Nullable BigDecimal price,
            @Nullable BigDecimal discount,
            @Nullable BigDecimal baseQuantity,
            @Nullable List<OnLine> allowances,
            @Nullable List<OnLine> charges,
            @Nullable String taxCategory,
            @Nullable BigDecimal rate) {}

    /** An allowance or charge on the whole invoice, to compute. */
    public record PreviewOnDocument(
            @Nullable BigDecimal amount,
            @Nullable String reason,
            @Nullable String taxCategory,
            @Nullable BigDecimal rate) {}

    /** An invoice to compute, in any currency. */
    public record Preview(
            @Nullable String currency,
            @Nullable List<PreviewLine> lines,
            @Nullable List<PreviewOnDocument> allowances,
            @Nullable List<PreviewOnDocument> charges,
            @Nullable BigDecimal prepaid,
            @Nullable BigDecimal rounding) {}

    /**
     * A line of a draft; the id, made by the caller, keeps it through edits.
     *
     * @param  service what is sold: stands for the service line, unit, tax code and description that are absent
     */
    public record Line(
            @Nullable String id,
            @Nullable String service,
            @Nullable String serviceLine,
            @Nullable String description,
            @Nullable BigDecimal quantity,
            @Nullable String unit,
            @Nullable BigDecimal price,
            @Nullable BigDecimal discount,
            @Nullable BigDecimal baseQuantity,
            @Nullable List<OnLine> allowances,
            @Nullable List<OnLine> charges,
            @Nullable String taxCode) {}

    /** An allowance or charge on the whole of a draft. */
    public record OnDocument(
            @Nullable BigDecimal amount,
            @Nullable String reason,
            @Nullable String taxCode) {}

    /** What a draft says. */
    public record Content(
            @Nullable String serviceDate,
            @Nullable String reference,
            @Nullable String note,
            @Nullable List<Line> lines,
            @Nullable List<OnDocument> allowances,
            @Nullable List<OnDocument> charges,
            @Nullable BigDecimal prepaid,
            @Nullable BigDecimal rounding) {}

    /** A new draft: freely written for a customer, or of a done visit, which then says what is on it. */
    public record NewDraft(
            @Nullable String id,
            @Nullable String customer,
            @Nullable Content content,
            @Nullable String visit) {}

    /** A change of a draft; the version that was read. */
    public record Edit(@Nullable Integer version, @Nullable Content content) {}

    /**
     * The issue of a draft; today where no date is given.
     *
     * @param  applyCredit whether the customer's unapplied credit pays of it at once, as far as it goes; needed where there
     *                    is any
     */
    public record Issue(
            @Nullable Integer version,
            @Nullable String date,
            @Nullable Boolean applyCredit) {}

    /** A reversal in full by a document of its own, whose id the caller makes; today where no date is given. */
    public record Reverse(
            @Nullable String id,
            @Nullable String date,
            @Nullable String reason) {}

    /** How much of a payment an invoice takes. */
    public record Allocation(
            @Nullable String invoice, @Nullable BigDecimal amount) {}

    /**
     * A payment; the id is made by the caller.
     *
     * @param  keepAsCredit all of it stays as unapplied credit on purpose; needed where nothing is allocated
     */
    public record Payment(
            @Nullable String id,
            @Nullable String customer,
            @Nullable String date,
            @Nullable BigDecimal amount,
            @Nullable String method,
            @Nullable String reference,
            @Nullable List<Allocation> allocations,
            @Nullable Boolean keepAsCredit) {}

    /** Credit paid back to a customer; the id is made by the caller. Today where no date is given. */
    public record Refund(
            @Nullable String id,
            @Nullable String customer,
            @Nullable String date,
            @Nullable BigDecimal amount,
            @Nullable String method,
            @Nullable String reference) {}

    /** Credit that an invoice takes; the id is that of the matching document. Today where no date is given. */
    public record Apply(
            @Nullable String id,
            @Nullable String date,
            @Nullable BigDecimal amount) {}

    /** A match to take back: its document, as the invoice's settlements name it; the id is that of the reversal. */
    public record Unapply(
            @Nullable String id,
            @Nullable String apply,
            @Nullable String date,
            @Nullable String reason) {}
}
