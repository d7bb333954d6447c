package eaveside.visits.internal;

import eaveside.customers.ManufacturerName;
import eaveside.inventory.CountBasis;
import eaveside.inventory.Drawn;
import eaveside.inventory.Ppm;
import eaveside.kernel.FindingId;
import eaveside.kernel.LotId;
import eaveside.kernel.MixId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.VisitLineId;
import eaveside.ledger.CostType;
import eaveside.visits.JobSheet;
import eaveside.visits.SkipReason;
import eaveside.visits.SoapWarning;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The rows under a sheet, each in the order that the sheet gave them in. */
final class SheetParts {
    private SheetParts() {}

    private static @Nullable UUID value(eaveside.kernel.@Nullable Id id) {
        return id == null ? null : id.value();
    }

    private static @Nullable ServiceLineId line(@Nullable UUID id) {
        return id == null ? null : new ServiceLineId(id);
    }

    private static Quantity quantity(BigDecimal value, String unit) {
        return Quantity.of(value, Unit.ofCode(unit));
    }

    /** Units done of a planned line; repeats the visit so that the database can hold line and sheet to the same one. */
    @Embeddable
    record DonePart(
            @Column(name = "visit_id") UUID visitId,
            @Column(name = "visit_line_id") UUID visitLineId,
            BigDecimal done,
            String unit) {
        static DonePart of(UUID visit, VisitLineId line, Quantity done) {
            return new DonePart(visit, line.value(), done.value(), done.unit().code());
        }

        VisitLineId line() {
            return new VisitLineId(visitLineId);
        }

        Quantity quantity() {
            return SheetParts.quantity(done, unit);
        }
    }

    @Embeddable
    record SkipPart(
            @Column(name = "visit_line_id") UUID visitLineId,
            BigDecimal quantity,
            String unit,
            @Enumerated(EnumType.STRING) SkipReason reason,
            String note,
            @Column(name = "finding_id") @Nullable UUID findingId) {
        static SkipPart of(VisitLineId line, JobSheet.Skip skip) {
            return new SkipPart(
                    line.value(),
                    skip.quantity().value(),
                    skip.quantity().unit().code(),
                    skip.reason(),
                    skip.note(),
                    value(skip.finding()));
        }

        JobSheet.Skip toSkip() {
            return new JobSheet.Skip(
                    SheetParts.quantity(quantity, unit),
                    reason,
                    note,
                    findingId == null ? null : new FindingId(findingId));
        }
    }

    @Embeddable
    record ReadingPart(
            @Column(name = "tap_water_ppm") BigDecimal tapWaterPpm,
            @Column(name = "pure_water_ppm") BigDecimal pureWaterPpm,
            BigDecimal volume,
            String unit,
            @Column(name = "lot_id") @Nullable UUID lotId,
            @Column(name = "service_line_id") @Nullable UUID serviceLineId) {
        static ReadingPart of(JobSheet.Reading reading) {
            return new ReadingPart(
                    reading.tapWater().value(),
                    reading.pureWater().value(),
                    reading.volume().value(),
                    reading.volume().unit().code(),
                    value(reading.canister()),
                    value(reading.serviceLine()));
        }

        JobSheet.Reading toReading() {
            return new JobSheet.Reading(
                    new Ppm(tapWaterPpm),
                    new Ppm(pureWaterPpm),
                    SheetParts.quantity(volume, unit),
                    lotId == null ? null : new LotId(lotId),
                    line(serviceLineId));
        }
    }

    @Embeddable
    record UsePart(
            @Column(name = "mix_id") @Nullable UUID mixId,
            @Column(name = "lot_id") @Nullable UUID lotId,
            @Column(name = "stock_item_id") @Nullable UUID stockItemId,
            BigDecimal quantity,
            String unit,
            @Column(name = "service_line_id") @Nullable UUID serviceLineId) {
        static UsePart of(JobSheet.Used used) {
            return switch (used) {
                case JobSheet.Used.OfMix mix -> of(mix.mix().value(), null, null, mix.volume(), mix.serviceLine());
                case JobSheet.Used.OfBrush brush ->
                    of(null, brush.lot().value(), null, brush.units(), brush.serviceLine());
                case JobSheet.Used.OfItem item ->
                    of(null, null, item.item().value(), item.quantity(), item.serviceLine());
            };
        }

        private static UsePart of(
                @Nullable UUID mix,
                @Nullable UUID lot,
                @Nullable UUID item,
                Quantity quantity,
                @Nullable ServiceLineId line) {
            return new UsePart(mix, lot, item, quantity.value(), quantity.unit().code(), value(line));
        }

        JobSheet.Used toUsed() {
            Quantity used = SheetParts.quantity(quantity, unit);
            if (mixId != null) {
                return new JobSheet.Used.OfMix(new MixId(mixId), used, line(serviceLineId));
            }
            if (lotId != null) {
                return new JobSheet.Used.OfBrush(new LotId(lotId), used, line(serviceLineId));
            }
            if (stockItemId != null) {
                return new JobSheet.Used.OfItem(new StockItemId(stockItemId), used, line(serviceLineId));
            }
            throw new IllegalStateException("the database lets no use without its goods stand");
        }
    }

    @Embeddable
    record CountPart(
            @Column(name = "document_id") UUID documentId,
            String reason,
            @Column(name = "stock_item_id") UUID stockItemId,
            @Column(name = "lot_id") @Nullable UUID lotId,
            @Enumerated(EnumType.STRING) CountBasis basis,
            BigDecimal quantity,
            String unit) {
        static CountPart of(JobSheet.Declared declared, JobSheet.Counted counted) {
            return new CountPart(
                    declared.document().value(),
                    declared.reason(),
                    counted.item().value(),
                    value(counted.lot()),
                    counted.basis(),
                    counted.quantity().value(),
                    counted.quantity().unit().code());
        }

        JobSheet.Counted toCounted() {
            return new JobSheet.Counted(
                    new StockItemId(stockItemId),
                    lotId == null ? null : new LotId(lotId),
                    basis,
                    SheetParts.quantity(quantity, unit));
        }
    }

    @Embeddable
    record OverrunPart(
            @Column(name = "item_id") UUID itemId,
            @Column(name = "lot_id") UUID lotId,
            BigDecimal quantity,
            String unit) {
        static OverrunPart of(Drawn.Overrun overrun) {
            return new OverrunPart(
                    overrun.item().value(),
                    overrun.lot().value(),
                    overrun.quantity().value(),
                    overrun.quantity().unit().code());
        }

        Drawn.Overrun toOverrun() {
            return new Drawn.Overrun(new StockItemId(itemId), new LotId(lotId), SheetParts.quantity(quantity, unit));
        }
    }

    @Embeddable
    record CostPart(
            @Column(name = "service_line_id") UUID serviceLineId,

            @Enumerated(EnumType.STRING) @Column(name = "cost_type")
            CostType costType,

            BigDecimal amount) {
        static CostPart of(SheetCost.Part part) {
            return new CostPart(
                    part.serviceLine().value(), part.type(), part.amount().amount());
        }
    }

    @Embeddable
    record WarningPart(
            @Column(name = "stock_item_id") UUID stockItemId,
            @Column(name = "surface_id") UUID surfaceId,
            @Column(name = "panel_manufacturer") String panelManufacturer) {
        static WarningPart of(SoapWarning warning) {
            return new WarningPart(
                    warning.soap().value(),
                    warning.surface().value(),
                    warning.manufacturer().value());
        }

        SoapWarning toWarning() {
            return new SoapWarning(
                    new StockItemId(stockItemId), new SurfaceId(surfaceId), new ManufacturerName(panelManufacturer));
        }
    }
}
