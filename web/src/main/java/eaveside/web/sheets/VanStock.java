package eaveside.web.sheets;

import eaveside.access.Role;
import eaveside.access.User;
import eaveside.inventory.Location;
import eaveside.inventory.LocationType;
import eaveside.inventory.LotLevel;
import eaveside.inventory.Mix;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockLevel;
import eaveside.inventory.StockType;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.visits.Visit;
import eaveside.web.View;
import eaveside.web.sheets.SheetPage.Stock;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What the consumables of a sheet can be drawn from: the signer's own van, or another of the crew. Without any cost. */
@Dependent
class VanStock {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    @Inject
    ReadStock readStock;

    /** Where this signer may draw for the visit, the likeliest first: the own van, the crew's, for the office any. */
    List<Location> locations(User signer, Visit visit) {
        boolean technician = signer.role() == Role.TECHNICIAN;
        return readStock.locations().stream()
                .filter(Location::active)
                .filter(location -> isCrews(location, visit) || !technician)
                .sorted(Comparator.comparing(
                                (Location location) -> !location.technicians().contains(signer.id()))
                        .thenComparing(location -> !isCrews(location, visit)))
                .toList();
    }

    private static boolean isCrews(Location location, Visit visit) {
        return location.type() == LocationType.VAN
                && location.technicians().stream().anyMatch(visit.crew()::contains);
    }

    Stock of(Location location, List<Location> locations, View view) {
        Map<String, String> canisters = new LinkedHashMap<>();
        Map<String, String> brushes = new LinkedHashMap<>();
        Map<String, String> items = new LinkedHashMap<>();
        Map<String, String> countable = new LinkedHashMap<>();
        for (LotLevel lot : readStock.countedSingly(location.id())) {
            String name = lot.label().isEmpty() ? lot.item().name() : lot.item().name() + " " + lot.label();
            (lot.item().type() == StockType.RESIN ? canisters : brushes)
                    .put(lot.lot().toString(), view.t("sheets.left", name, view.exactly(about(lot.quantity()))));
            countable.put(
                    lot.item().id() + "/" + lot.lot(), withUnit(name, lot.item().baseUnit(), view));
        }
        for (StockLevel level : readStock.levels(location.id())) {
            StockItem item = level.item();
            if (!item.type().isCountedSingly() && level.quantity().isPositive()) {
                items.put(
                        item.id().toString(),
                        view.t("sheets.left", item.name(), view.exactly(about(level.quantity()))));
            }
        }
        readStock.items().stream()
                .filter(item -> item.active() && !item.type().isCountedSingly())
                .forEach(item -> countable.put(item.id().toString(), withUnit(item.name(), item.baseUnit(), view)));
        Map<String, String> other = new LinkedHashMap<>();
        locations.stream()
                .filter(p -> !p.id().equals(location.id()))
                .forEach(p -> other.put(p.id().toString(), p.name()));
        return new Stock(location.name(), canisters, mixes(), brushes, items, countable, other);
    }

    private Map<String, String> mixes() {
        Map<String, String> mixes = new LinkedHashMap<>();
        readStock.mixes().stream()
                .filter(Mix::active)
                .forEach(mix -> mixes.put(mix.id().toString(), mix.name()));
        return mixes;
    }

    /** The name of what is counted in the unit. */
    static String withUnit(String name, Unit counted, View view) {
        String unit = view.unit(counted);
        return unit.isEmpty() ? name : name + " (" + unit + ")";
    }

    /** What is in the books as a crew would say it: whole above a hundred, else to the hundredth. */
    private static Quantity about(Quantity held) {
        int decimals = held.value().compareTo(HUNDRED) >= 0 ? 0 : 2;
        return Quantity.of(held.value().setScale(decimals, RoundingMode.HALF_UP), held.unit());
    }
}
