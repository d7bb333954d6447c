package eaveside.kernel;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Stores ids as the UUIDs that they are, so that rows hold them typed. A row's own key stays a UUID: converters do not apply
 * to attributes under {@code @Id} or within an embedded key (Jakarta Persistence, on {@code Convert}).
 */
public final class IdConverters {
    private IdConverters() {}

    /** For one type of id. */
    public abstract static class Of<T extends Id> implements AttributeConverter<T, UUID> {
        private final Function<UUID, T> typed;

        Of(Function<UUID, T> typed) {
            this.typed = typed;
        }

        @Override
        public @Nullable UUID convertToDatabaseColumn(@Nullable T id) {
            return id == null ? null : id.value();
        }

        @Override
        public @Nullable T convertToEntityAttribute(@Nullable UUID value) {
            return value == null ? null : typed.apply(value);
        }
    }

    @Converter(autoApply = true)
    public static class OfUserId extends Of<UserId> {
        public OfUserId() {
            super(UserId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfDocumentId extends Of<DocumentId> {
        public OfDocumentId() {
            super(DocumentId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfCustomerId extends Of<CustomerId> {
        public OfCustomerId() {
            super(CustomerId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfContactId extends Of<ContactId> {
        public OfContactId() {
            super(ContactId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfSiteId extends Of<SiteId> {
        public OfSiteId() {
            super(SiteId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfSurfaceId extends Of<SurfaceId> {
        public OfSurfaceId() {
            super(SurfaceId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfServiceLineId extends Of<ServiceLineId> {
        public OfServiceLineId() {
            super(ServiceLineId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfServiceItemId extends Of<ServiceItemId> {
        public OfServiceItemId() {
            super(ServiceItemId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfStockItemId extends Of<StockItemId> {
        public OfStockItemId() {
            super(StockItemId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfLocationId extends Of<LocationId> {
        public OfLocationId() {
            super(LocationId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfLotId extends Of<LotId> {
        public OfLotId() {
            super(LotId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfMixId extends Of<MixId> {
        public OfMixId() {
            super(MixId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfPriceBookId extends Of<PriceBookId> {
        public OfPriceBookId() {
            super(PriceBookId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfQuoteId extends Of<QuoteId> {
        public OfQuoteId() {
            super(QuoteId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfQuoteLineId extends Of<QuoteLineId> {
        public OfQuoteLineId() {
            super(QuoteLineId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfFindingId extends Of<FindingId> {
        public OfFindingId() {
            super(FindingId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfPhotoId extends Of<PhotoId> {
        public OfPhotoId() {
            super(PhotoId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfVisitId extends Of<VisitId> {
        public OfVisitId() {
            super(VisitId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfVisitLineId extends Of<VisitLineId> {
        public OfVisitLineId() {
            super(VisitLineId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfScopeChangeId extends Of<ScopeChangeId> {
        public OfScopeChangeId() {
            super(ScopeChangeId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfInvoiceId extends Of<InvoiceId> {
        public OfInvoiceId() {
            super(InvoiceId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfInvoiceLineId extends Of<InvoiceLineId> {
        public OfInvoiceLineId() {
            super(InvoiceLineId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfPaymentId extends Of<PaymentId> {
        public OfPaymentId() {
            super(PaymentId::new);
        }
    }

    @Converter(autoApply = true)
    public static class OfVehicleId extends Of<VehicleId> {
        public OfVehicleId() {
            super(VehicleId::new);
        }
    }
}
