package eaveside.pricing.internal;

import eaveside.catalog.StandardMinutes;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteId;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.Explanation;
import eaveside.pricing.PriceReason;
import eaveside.pricing.Quote;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** A priced line of a quote, with its explanation. */
@Entity
@Table(name = "quote_line")
public class QuoteLineRow {
    @Id
    UUID id;

    @Column(name = "quote_id")
    QuoteId quoteId;

    int position;

    @Column(name = "service_item_id")
    ServiceItemId serviceItemId;

    @Column(name = "service_line_id")
    ServiceLineId serviceLineId;

    @Column(name = "surface_id")
    @Nullable
    SurfaceId surfaceId;

    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "quantity"))
    Quantity quantity;

    @Column(name = "unit_price")
    BigDecimal unitPrice;

    /** What the unit price is for. */
    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "base_quantity"))
    @AttributeOverride(name = "unit", column = @Column(name = "base_unit"))
    Quantity base;

    @Column(name = "net_before")
    BigDecimal netBefore;

    @Column(name = "top_up")
    BigDecimal topUp;

    BigDecimal net;

    @Column(name = "standard_minutes")
    BigDecimal standardMinutes;

    @Column(name = "expected_cost")
    @Nullable
    BigDecimal expectedCost;

    @ElementCollection
    @CollectionTable(name = "quote_line_reason", joinColumns = @JoinColumn(name = "quote_line_id"))
    List<ReasonValue> reasons = new ArrayList<>();

    QuoteLineRow() {}

    QuoteLineRow(QuoteId quote, int position, Quote.Line line) {
        this.id = line.id().value();
        this.quoteId = quote;
        this.position = position;
        this.serviceItemId = line.serviceItem();
        this.serviceLineId = line.serviceLine();
        this.surfaceId = line.surface();
        this.quantity = line.quantity();
        this.unitPrice = line.unitPrice().amount();
        this.base = line.unitPrice().base();
        this.netBefore = line.netBeforeTopUp().amount();
        this.topUp = line.topUp().amount();
        this.net = line.net().amount();
        this.standardMinutes = line.standardMinutes().value();
        this.expectedCost =
                line.expectedCost() == null ? null : line.expectedCost().amount();
        for (PriceReason reason : line.explanation().reasons()) {
            reasons.add(ReasonValue.of(reasons.size(), reason));
        }
    }

    public QuoteLineId id() {
        return new QuoteLineId(id);
    }

    /** The price that was quoted for one base quantity. */
    public UnitPrice unitPrice(CurrencyUnit currency) {
        return UnitAmounts.canonical("unitPrice", new UnitPrice(currency, unitPrice, base));
    }

    public ServiceItemId serviceItem() {
        return serviceItemId;
    }

    Quote.Line toLine(CurrencyUnit currency) {
        List<PriceReason> because = reasons.stream()
                .sorted(Comparator.comparingInt(ReasonValue::position))
                .map(r -> r.toReason(currency, base))
                .toList();
        return new Quote.Line(
                id(),
                serviceItem(),
                serviceLineId,
                surfaceId,
                quantity,
                unitPrice(currency),
                money(currency, netBefore),
                money(currency, topUp),
                money(currency, net),
                new Explanation(quantity, because),
                new StandardMinutes(standardMinutes),
                expectedCost == null ? null : money(currency, expectedCost));
    }

    private static Money money(CurrencyUnit currency, BigDecimal stored) {
        return Money.of(currency, stored.stripTrailingZeros());
    }
}
