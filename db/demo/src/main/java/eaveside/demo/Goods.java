package eaveside.demo;

import eaveside.inventory.Pack;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockKind;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import java.util.List;

/** What the company buys and uses up, with the price of a pack; all figures are invented. */
enum Goods {
    ALKALINE(
            "SOAP-ALK",
            "Alkaline soap concentrate",
            StockKind.CONCENTRATE,
            Unit.US_FLUID_OUNCE,
            "5 gal pail",
            640,
            "96.00"),
    NEUTRAL(
            "SOAP-NEU",
            "Neutral soap concentrate",
            StockKind.CONCENTRATE,
            Unit.US_FLUID_OUNCE,
            "1 gal jug",
            128,
            "38.50"),
    BIOCIDE(
            "ROOF-BIO",
            "Roof biocide concentrate",
            StockKind.CONCENTRATE,
            Unit.US_FLUID_OUNCE,
            "2.5 gal jug",
            320,
            "71.00"),
    RESIN("DI-RESIN", "Mixed-bed DI resin canister", StockKind.RESIN, Unit.GRAIN, "Canister", 5_500, "168.00"),
    ARRAY_BRUSH("BRUSH-PV", "Array brush, soft bristle", StockKind.BRUSH, Unit.PIECE, "Brush", 6_000, "142.00"),
    WINDOW_BRUSH("BRUSH-WIN", "Window brush, boar's hair mix", StockKind.BRUSH, Unit.PIECE, "Brush", 8_000, "78.00"),
    RUBBER("RUBBER", "Squeegee rubber", StockKind.PLAIN, Unit.FOOT, "Roll", 36, "29.40"),
    GLOVES("GLOVES", "Nitrile gloves", StockKind.PLAIN, Unit.PIECE, "Box of 100", 100, "14.75"),
    FILTER("FILTER", "Sediment filter cartridge", StockKind.PLAIN, Unit.PIECE, "Case of 6", 6, "41.00"),
    CLOTH("CLOTH", "Scrim cloth", StockKind.PLAIN, Unit.PIECE, "Bundle of 10", 10, "23.00");

    final String code;
    final String title;
    final StockKind kind;
    final Unit unit;
    final String pack;
    final int content;
    final String packCost;

    Goods(String code, String title, StockKind kind, Unit unit, String pack, int content, String packCost) {
        this.code = code;
        this.title = title;
        this.kind = kind;
        this.unit = unit;
        this.pack = pack;
        this.content = content;
        this.packCost = packCost;
    }

    StockItem item(StockItemId id) {
        return new StockItem(
                id,
                code,
                title,
                kind,
                unit,
                List.of(new Pack(pack, Quantity.of(content, unit))),
                this == ALKALINE,
                true,
                null);
    }

    Quantity of(long quantity) {
        return Quantity.of(quantity, unit);
    }
}
