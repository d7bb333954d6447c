package eaveside.demo;

import eaveside.inventory.Pack;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import java.util.List;

/** What the company buys and uses up, with the price of a pack; all figures are invented. */
enum Goods {
    ALKALINE(
            "SOAP-ALK",
            "Alkaline soap concentrate",
            StockType.CONCENTRATE,
            Unit.US_FLUID_OUNCE,
            "5 gal pail",
            640,
            "96.00"),
    NEUTRAL(
            "SOAP-NEU",
            "Neutral soap concentrate",
            StockType.CONCENTRATE,
            Unit.US_FLUID_OUNCE,
            "1 gal jug",
            128,
            "38.50"),
    BIOCIDE(
            "ROOF-BIO",
            "Roof biocide concentrate",
            StockType.CONCENTRATE,
            Unit.US_FLUID_OUNCE,
            "2.5 gal jug",
            320,
            "71.00"),
    RESIN("DI-RESIN", "Mixed-bed DI resin canister", StockType.RESIN, Unit.GRAIN, "Canister", 5_500, "168.00"),
    ARRAY_BRUSH("BRUSH-PV", "Array brush, soft bristle", StockType.BRUSH, Unit.PIECE, "Brush", 6_000, "142.00"),
    WINDOW_BRUSH("BRUSH-WIN", "Window brush, boar's hair mix", StockType.BRUSH, Unit.PIECE, "Brush", 8_000, "78.00"),
    RUBBER("RUBBER", "Squeegee rubber", StockType.PLAIN, Unit.FOOT, "Roll", 36, "29.40"),
    GLOVES("GLOVES", "Nitrile gloves", StockType.PLAIN, Unit.PIECE, "Box of 100", 100, "14.75"),
    FILTER("FILTER", "Sediment filter cartridge", StockType.PLAIN, Unit.PIECE, "Case of 6", 6, "41.00"),
    CLOTH("CLOTH", "Scrim cloth", StockType.PLAIN, Unit.PIECE, "Bundle of 10", 10, "23.00");

    final String code;
    final String title;
    final StockType type;
    final Unit unit;
    final String pack;
    final int content;
    final String packCost;

    Goods(String code, String title, StockType type, Unit unit, String pack, int content, String packCost) {
        this.code = code;
        this.title = title;
        this.type = type;
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
                type,
                unit,
                List.of(new Pack(pack, Quantity.of(content, unit))),
                this == ALKALINE,
                true,
                0);
    }

    Quantity of(long quantity) {
        return Quantity.of(quantity, unit);
    }
}
