package eaveside.kernel;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.lang.reflect.ParameterizedType;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Stores ids as the UUIDs that they are, so that rows hold them typed. */
public final class IdConverters {
    private IdConverters() {}

    /** For one type of id, which the subclass names. */
    public abstract static class Of<T extends Id> implements AttributeConverter<T, UUID> {
        @Override
        public @Nullable UUID convertToDatabaseColumn(@Nullable T id) {
            return id == null ? null : id.value();
        }

        @Override
        public @Nullable T convertToEntityAttribute(@Nullable UUID value) {
            return value == null ? null : Records.make(type(), Map.of("value", value));
        }

        @SuppressWarnings("unchecked")
        private Class<T> type() {
            return (Class<T>) ((ParameterizedType) getClass().getGenericSuperclass()).getActualTypeArguments()[0];
        }
    }

    @Converter(autoApply = true)
    public static class OfUserId extends Of<UserId> {}

    @Converter(autoApply = true)
    public static class OfDocumentId extends Of<DocumentId> {}

    @Converter(autoApply = true)
    public static class OfCustomerId extends Of<CustomerId> {}

    @Converter(autoApply = true)
    public static class OfContactId extends Of<ContactId> {}

    @Converter(autoApply = true)
    public static class OfSiteId extends Of<SiteId> {}

    @Converter(autoApply = true)
    public static class OfSurfaceId extends Of<SurfaceId> {}

    @Converter(autoApply = true)
    public static class OfServiceLineId extends Of<ServiceLineId> {}

    @Converter(autoApply = true)
    public static class OfServiceItemId extends Of<ServiceItemId> {}

    @Converter(autoApply = true)
    public static class OfStockItemId extends Of<StockItemId> {}

    @Converter(autoApply = true)
    public static class OfLocationId extends Of<LocationId> {}

    @Converter(autoApply = true)
    public static class OfLotId extends Of<LotId> {}

    @Converter(autoApply = true)
    public static class OfMixId extends Of<MixId> {}

    @Converter(autoApply = true)
    public static class OfPriceBookId extends Of<PriceBookId> {}

    @Converter(autoApply = true)
    public static class OfQuoteId extends Of<QuoteId> {}

    @Converter(autoApply = true)
    public static class OfQuoteLineId extends Of<QuoteLineId> {}

    @Converter(autoApply = true)
    public static class OfFindingId extends Of<FindingId> {}

    @Converter(autoApply = true)
    public static class OfPhotoId extends Of<PhotoId> {}

    @Converter(autoApply = true)
    public static class OfVisitId extends Of<VisitId> {}

    @Converter(autoApply = true)
    public static class OfVisitLineId extends Of<VisitLineId> {}

    @Converter(autoApply = true)
    public static class OfScopeChangeId extends Of<ScopeChangeId> {}

    @Converter(autoApply = true)
    public static class OfInvoiceId extends Of<InvoiceId> {}

    @Converter(autoApply = true)
    public static class OfInvoiceLineId extends Of<InvoiceLineId> {}

    @Converter(autoApply = true)
    public static class OfPaymentId extends Of<PaymentId> {}

    @Converter(autoApply = true)
    public static class OfVehicleId extends Of<VehicleId> {}
}
