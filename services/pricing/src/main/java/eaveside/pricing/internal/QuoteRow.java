package eaveside.pricing.internal;

import eaveside.catalog.StandardMinutes;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.Money;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteId;
import eaveside.kernel.SiteId;
import eaveside.kernel.UserId;
import eaveside.pricing.ExpectedTravel;
import eaveside.pricing.NewQuote;
import eaveside.pricing.PricingRefusal;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteStatus;
import eaveside.pricing.QuoteSummary;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** A quote without its lines. */
@Entity
@Table(name = "quote")
public class QuoteRow {
    @Id
    UUID id;

    @Column(updatable = false)
    long number;

    @Column(name = "customer_id", updatable = false)
    CustomerId customerId;

    @Column(name = "site_id", updatable = false)
    SiteId siteId;

    @Column(name = "price_book_id")
    PriceBookId priceBookId;

    @Column(updatable = false)
    LocalDate date;

    @Column(name = "valid_until")
    LocalDate validUntil;

    @Enumerated(EnumType.STRING)
    QuoteStatus status;

    @Column(name = "came_from", updatable = false)
    @Nullable
    FindingId cameFrom;

    String note;

    @Column(name = "driving_minutes")
    int drivingMinutes;

    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "distance"))
    @AttributeOverride(name = "unit", column = @Column(name = "distance_unit"))
    Quantity distance;

    BigDecimal total;

    @Column(name = "expected_minutes")
    BigDecimal expectedMinutes;

    @Column(name = "expected_cost")
    @Nullable
    BigDecimal expectedCost;

    @Column(name = "saved_by")
    UserId savedBy;

    @Column(name = "saved_at")
    Instant savedAt;

    @Column(name = "decided_by")
    @Nullable
    UserId decidedBy;

    @Column(name = "decided_at")
    @Nullable
    Instant decidedAt;

    String decision;

    @Column(name = "draft_fingerprint", updatable = false)
    String draftFingerprint;

    String fingerprint;

    @Version
    int version;

    QuoteRow() {}

    /** A new quote; its first version is 1. */
    public QuoteRow(NewQuote make, CustomerId customer, PricedScope priced, long number, LocalDate date, Instant at) {
        this.id = make.id().value();
        this.number = number;
        this.customerId = customer;
        this.siteId = make.site();
        this.cameFrom = make.cameFrom();
        this.date = date;
        this.decision = "";
        this.version = 1;
        this.draftFingerprint = Fingerprint.of(make).hex();
        fill(priced);
        note(make.by(), at, Fingerprint.of(make));
    }

    /** Prices it anew; it is a draft again. */
    public void write(PricedScope priced) {
        fill(priced);
    }

    private void fill(PricedScope priced) {
        status = QuoteStatus.DRAFT;
        priceBookId = priced.book();
        validUntil = priced.scope().validUntil();
        note = priced.scope().note();
        drivingMinutes = priced.scope().travel().drivingMinutes();
        distance = priced.scope().travel().distance();
        total = priced.total().amount();
        expectedMinutes = priced.expectedMinutes().value();
        expectedCost =
                priced.expectedCost() == null ? null : priced.expectedCost().amount();
    }

    public void send() {
        status = QuoteStatus.SENT;
    }

    /** Accepted or declined by whoever changes it now. */
    public void close(QuoteStatus as, String words) {
        decision = words;
        decidedBy = savedBy;
        decidedAt = savedAt;
        status = as;
    }

    /** Notes who changes it, when, and by which command. */
    public void changed(UserId by, Instant at, Fingerprint command) {
        note(by, at, command);
    }

    private void note(UserId by, Instant at, Fingerprint command) {
        savedBy = by;
        savedAt = at;
        fingerprint = command.hex();
    }

    public boolean wasDraftedBy(Fingerprint command) {
        return draftFingerprint.equals(command.hex());
    }

    public boolean lastSaw(Fingerprint command) {
        return fingerprint.equals(command.hex());
    }

    /** Refuses an accepted or declined quote. */
    public void requireOpen() {
        if (!status.isOpen()) {
            throw new PricingRefusal.QuoteClosed(number, status.name().toLowerCase(Locale.ROOT));
        }
    }

    /** Refuses once it has expired by that day. */
    public void requireValidOn(LocalDate day) {
        if (validUntil.isBefore(day)) {
            throw new PricingRefusal.QuoteExpired(number, validUntil);
        }
    }

    public boolean isExpiredOn(LocalDate day) {
        return validUntil.isBefore(day);
    }

    public int version() {
        return version;
    }

    public SiteId site() {
        return siteId;
    }

    public PriceBookId book() {
        return priceBookId;
    }

    public UserId savedBy() {
        return savedBy;
    }

    public long number() {
        return number;
    }

    public CustomerId customer() {
        return customerId;
    }

    public QuoteSummary toSummary(CurrencyUnit currency, String customerName, String siteName) {
        return new QuoteSummary(
                new QuoteId(id),
                number,
                status,
                customerId,
                customerName,
                siteId,
                siteName,
                date,
                validUntil,
                cameFrom,
                money(currency, total));
    }

    public Quote toQuote(CurrencyUnit currency, List<QuoteLineRow> lines) {
        return new Quote(
                new QuoteId(id),
                number,
                version,
                status,
                customerId,
                siteId,
                book(),
                date,
                validUntil,
                cameFrom,
                note,
                new ExpectedTravel(drivingMinutes, distance),
                lines.stream().map(l -> l.toLine(currency)).toList(),
                money(currency, total),
                new StandardMinutes(expectedMinutes),
                expectedCost == null ? null : money(currency, expectedCost),
                decidedBy == null || decidedAt == null ? null : new Quote.Decision(decision, decidedBy, decidedAt));
    }

    private static Money money(CurrencyUnit currency, BigDecimal stored) {
        return Money.of(currency, stored.stripTrailingZeros());
    }
}
