package eaveside.kernel;

import java.util.UUID;

/** An identity that knows what it identifies, so that a visit's id cannot be passed where a customer's is meant. */
public sealed interface Id
        permits UserId,
                DocumentId,
                CustomerId,
                ContactId,
                SiteId,
                SurfaceId,
                ServiceLineId,
                ServiceItemId,
                StockItemId,
                LocationId,
                LotId,
                MixId,
                PriceBookId,
                QuoteId,
                QuoteLineId,
                FindingId,
                PhotoId,
                VisitId,
                VisitLineId,
                ScopeChangeId,
                SentSheetId,
                InvoiceId,
                InvoiceLineId,
                PaymentId,
                VehicleId {
    UUID value();
}
