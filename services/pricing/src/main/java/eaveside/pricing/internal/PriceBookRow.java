package eaveside.pricing.internal;

import eaveside.kernel.Fingerprint;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.UserId;
import eaveside.pricing.PriceBook;
import eaveside.pricing.PriceBookDraft;
import eaveside.pricing.PriceBookStatus;
import eaveside.pricing.PriceBookSummary;
import eaveside.pricing.PriceBookView;
import eaveside.pricing.PriceList;
import eaveside.pricing.PricingRefusal;
import eaveside.pricing.ServiceItemPrice;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** A price book; a draft until it has a number. */
@Entity
@Table(name = "price_book")
public class PriceBookRow {
    @Id
    UUID id;

    @Nullable
    Long number;

    String name;

    @Column(name = "valid_from")
    LocalDate validFrom;

    @Column(name = "visit_minimum")
    BigDecimal visitMinimum;

    @Column(name = "shared_reduction")
    BigDecimal sharedReduction;

    @ElementCollection
    @CollectionTable(name = "price_book_line_minimum", joinColumns = @JoinColumn(name = "price_book_id"))
    List<MinimumValue> minimums = new ArrayList<>();

    @ElementCollection
    @CollectionTable(name = "service_item_price", joinColumns = @JoinColumn(name = "price_book_id"))
    List<PriceValue> prices = new ArrayList<>();

    @ElementCollection
    @CollectionTable(name = "quantity_step", joinColumns = @JoinColumn(name = "price_book_id"))
    List<StepValue> steps = new ArrayList<>();

    @ElementCollection
    @CollectionTable(name = "surcharge", joinColumns = @JoinColumn(name = "price_book_id"))
    List<SurchargeValue> surcharges = new ArrayList<>();

    @Column(name = "saved_by")
    UserId savedBy;

    @Column(name = "saved_at")
    Instant savedAt;

    @Column(name = "published_by")
    @Nullable
    UserId publishedBy;

    @Column(name = "published_at")
    @Nullable
    Instant publishedAt;

    String fingerprint;

    @Version
    int version;

    PriceBookRow() {}

    /** A new draft; its first version is 1. */
    public PriceBookRow(PriceBookId id, PriceList list, UserId by, Instant at, Fingerprint command) {
        this.id = id.value();
        this.version = 1;
        fill(list, by, at, command);
    }

    public void write(PriceList list, UserId by, Instant at, Fingerprint command) {
        fill(list, by, at, command);
    }

    private void fill(PriceList list, UserId by, Instant at, Fingerprint command) {
        name = list.name();
        validFrom = list.from();
        visitMinimum = list.visitMinimum().amount();
        sharedReduction = list.sharedReduction().value();
        minimums = new ArrayList<>(
                list.lineMinimums().stream().map(MinimumValue::of).toList());
        prices = new ArrayList<>();
        steps = new ArrayList<>();
        surcharges = new ArrayList<>();
        for (ServiceItemPrice price : list.prices()) {
            ServiceItemId serviceItem = price.serviceItem();
            prices.add(PriceValue.of(price, prices.size()));
            price.steps().forEach(step -> steps.add(StepValue.of(serviceItem, step)));
            price.surcharges().forEach(surcharge -> surcharges.add(SurchargeValue.of(serviceItem, surcharge)));
        }
        savedBy = by;
        savedAt = at;
        fingerprint = command.hex();
    }

    public void publish(long drawn, UserId by, Instant at, Fingerprint command) {
        number = drawn;
        publishedBy = by;
        publishedAt = at;
        fingerprint = command.hex();
    }

    public boolean isPublished() {
        return number != null;
    }

    public boolean lastSaw(Fingerprint command) {
        return fingerprint.equals(command.hex());
    }

    public PriceBookId id() {
        return new PriceBookId(id);
    }

    public LocalDate validFrom() {
        return validFrom;
    }

    public String name() {
        return name;
    }

    public PriceBookDraft toDraft(CurrencyUnit currency) {
        return new PriceBookDraft(id(), toList(currency), version);
    }

    /** Refuses a draft. */
    public PriceBook toBook(CurrencyUnit currency) {
        if (number == null || publishedBy == null || publishedAt == null) {
            throw new PricingRefusal.NotPublished(name);
        }
        return new PriceBook(new PriceBookId(id), number, toList(currency), publishedBy, publishedAt);
    }

    public PriceBookView toView(CurrencyUnit currency, PriceBookStatus status) {
        return new PriceBookView(
                id(), number, status, toList(currency), isPublished() ? 0 : version, publishedBy, publishedAt);
    }

    public PriceBookSummary toSummary(PriceBookStatus status) {
        return new PriceBookSummary(id(), number, name, validFrom, status);
    }

    private PriceList toList(CurrencyUnit currency) {
        return new PriceList(
                name,
                validFrom,
                Money.of(currency, visitMinimum.stripTrailingZeros()),
                Percent.of(sharedReduction),
                minimums.stream()
                        .sorted(Comparator.comparing(
                                minimum -> minimum.serviceLine().value()))
                        .map(m -> m.toMinimum(currency))
                        .toList(),
                prices.stream()
                        .sorted(Comparator.comparingInt(PriceValue::position))
                        .map(p -> toPrice(p, currency))
                        .toList());
    }

    private ServiceItemPrice toPrice(PriceValue price, CurrencyUnit currency) {
        Quantity base = price.base();
        return new ServiceItemPrice(
                price.serviceItem(),
                steps.stream()
                        .filter(s -> s.serviceItem().equals(price.serviceItem()))
                        .map(s -> s.toStep(base, currency))
                        .toList(),
                surcharges.stream()
                        .filter(s -> s.serviceItem().equals(price.serviceItem()))
                        .map(s -> s.toSurcharge(base, currency))
                        .toList());
    }
}
