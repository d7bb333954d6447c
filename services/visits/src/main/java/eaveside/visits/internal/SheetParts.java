package eaveside.visits.internal;

import eaveside.customers.ManufacturerName;
import eaveside.inventory.CountBasis;
import eaveside.inventory.Drawn;
import eaveside.inventory.Ppm;
import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.LotId;
import eaveside.kernel.MixId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.ledger.CostType;
import eaveside.visits.JobSheet;
import eaveside.visits.SkipReason;
import eaveside.visits.SoapWarning;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Embedded;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** The rows under a sheet, each in the order that the sheet gave them in. */
final class SheetParts {
    private SheetParts() {}

    /** Units done of a planned line; repeats the visit so that the database can hold line and sheet to the same one. */
    @Embeddable
    record DonePart(
            @Column(name = "visit_id") VisitId visit,
            @Column(name = "visit_line_id") VisitLineId line,

            @Embedded @AttributeOverride(name = "value", column = @Column(name = "done"))
            Quantity done) {}

    @Embeddable
    record SkipPart(
            @Column(name = "visit_line_id") VisitLineId line,

            @Embedded @AttributeOverride(name = "value", column = @Column(name = "quantity"))
            Quantity quantity,

            @Enumerated(EnumType.STRING) SkipReason reason,
            String note,
            @Column(name = "finding_id") @Nullable FindingId finding) {
        static SkipPart of(VisitLineId line, JobSheet.Skip skip) {
            return new SkipPart(line, skip.quantity(), skip.reason(), skip.note(), skip.finding());
        }

        JobSheet.Skip toSkip() {
            return new JobSheet.Skip(quantity, reason, note, finding);
        }
    }

    @Embeddable
    record ReadingPart(
            @Embedded @AttributeOverride(name = "value", column = @Column(name = "tap_water_ppm"))
            Ppm tapWater,

            @Embedded @AttributeOverride(name = "value", column = @Column(name = "pure_water_ppm"))
            Ppm pureWater,

            @Embedded @AttributeOverride(name = "value", column = @Column(name = "volume"))
            Quantity volume,

            @Column(name = "lot_id") @Nullable LotId canister,
            @Column(name = "service_line_id") @Nullable ServiceLineId serviceLine) {
        static ReadingPart of(JobSheet.Reading reading) {
            return new ReadingPart(
                    reading.tapWater(),
                    reading.pureWater(),
                    reading.volume(),
                    reading.canister(),
                    reading.serviceLine());
        }

        JobSheet.Reading toReading() {
            return new JobSheet.Reading(tapWater, pureWater, volume, canister, serviceLine);
        }
    }

    @Embeddable
    record UsePart(
            @Column(name = "mix_id") @Nullable MixId mix,
            @Column(name = "lot_id") @Nullable LotId lot,
            @Column(name = "stock_item_id") @Nullable StockItemId item,

            @Embedded @AttributeOverride(name = "value", column = @Column(name = "quantity"))
            Quantity quantity,

            @Column(name = "service_line_id") @Nullable ServiceLineId serviceLine) {
        static UsePart of(JobSheet.Used used) {
            return switch (used) {
                case JobSheet.Used.OfMix of -> new UsePart(of.mix(), null, null, of.volume(), of.serviceLine());
                case JobSheet.Used.OfBrush of -> new UsePart(null, of.lot(), null, of.units(), of.serviceLine());
                case JobSheet.Used.OfItem of -> new UsePart(null, null, of.item(), of.quantity(), of.serviceLine());
            };
        }

        JobSheet.Used toUsed() {
            if (mix != null) {
                return new JobSheet.Used.OfMix(mix, quantity, serviceLine);
            }
            if (lot != null) {
                return new JobSheet.Used.OfBrush(lot, quantity, serviceLine);
            }
            if (item != null) {
                return new JobSheet.Used.OfItem(item, quantity, serviceLine);
            }
            throw new IllegalStateException("the database lets no use without its goods stand");
        }
    }

    @Embeddable
    record CountPart(
            @Column(name = "document_id") DocumentId document,
            String reason,
            @Column(name = "stock_item_id") StockItemId item,
            @Column(name = "lot_id") @Nullable LotId lot,
            @Enumerated(EnumType.STRING) CountBasis basis,

            @Embedded @AttributeOverride(name = "value", column = @Column(name = "quantity"))
            Quantity quantity) {
        static CountPart of(JobSheet.Declared declared, JobSheet.Counted counted) {
            return new CountPart(
                    declared.document(),
                    declared.reason(),
                    counted.item(),
                    counted.lot(),
                    counted.basis(),
                    counted.quantity());
        }

        JobSheet.Counted toCounted() {
            return new JobSheet.Counted(item, lot, basis, quantity);
        }
    }

    @Embeddable
    record OverrunPart(
            @Column(name = "item_id") StockItemId item,
            @Column(name = "lot_id") LotId lot,

            @Embedded @AttributeOverride(name = "value", column = @Column(name = "quantity"))
            Quantity quantity) {
        static OverrunPart of(Drawn.Overrun overrun) {
            return new OverrunPart(overrun.item(), overrun.lot(), overrun.quantity());
        }

        Drawn.Overrun toOverrun() {
            return new Drawn.Overrun(item, lot, quantity);
        }
    }

    @Embeddable
    record CostPart(
            @Column(name = "service_line_id") ServiceLineId serviceLine,

            @Enumerated(EnumType.STRING) @Column(name = "cost_type")
            CostType costType,

            BigDecimal amount) {
        static CostPart of(SheetCost.Part part) {
            return new CostPart(part.serviceLine(), part.type(), part.amount().amount());
        }
    }

    @Embeddable
    record WarningPart(
            @Column(name = "stock_item_id") StockItemId soap,
            @Column(name = "surface_id") SurfaceId surface,
            @Column(name = "panel_manufacturer") String panelManufacturer) {
        static WarningPart of(SoapWarning warning) {
            return new WarningPart(
                    warning.soap(), warning.surface(), warning.manufacturer().value());
        }

        SoapWarning toWarning() {
            return new SoapWarning(soap, surface, new ManufacturerName(panelManufacturer));
        }
    }
}
