package eaveside.web.sheets;

import eaveside.access.Role;
import eaveside.inventory.Location;
import eaveside.inventory.LocationType;
import eaveside.inventory.LotLevel;
import eaveside.inventory.Mix;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.visits.Visit;
import eaveside.web.View;
import eaveside.web.forms.Options;
import eaveside.web.security.Viewer;
import eaveside.web.sheets.SheetPage.Stock;
import jakarta.inject.Inject;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** What the consumables of a sheet can be drawn from: the signer's own van, or another of the crew. Without any cost. */
@Shared
class VanStock {
    @Inject
    ReadStock readStock;

    @Inject
    Viewer viewer;

    /** Where this signer may draw for the visit, the likeliest first: the own van, the crew's, for the office any. */
    List<Location> locations(Visit visit) {
        UserId signer = viewer.id();
        boolean technician = viewer.view().is(Role.TECHNICIAN);
        return readStock.locations().stream()
                .filter(Location::active)
                .filter(location -> isCrews(location, visit) || !technician)
                .sorted(Comparator.comparing(
                                (Location location) -> !location.technicians().contains(signer))
                        .thenComparing(location -> !isCrews(location, visit)))
                .toList();
    }

    private static boolean isCrews(Location location, Visit visit) {
        return location.type() == LocationType.VAN
                && location.technicians().stream().anyMatch(visit.crew()::contains);
    }

    Stock of(Location location, List<Location> locations, View view) {
        List<LotLevel> lots = readStock.countedSingly(location.id());
        Map<String, String> countable = Options.of(
                lots.stream(),
                lot -> lot.item().id() + "/" + lot.lot(),
                lot -> withUnit(name(lot), view.unitOf(lot.item().baseUnit()), view));
        countable.putAll(Options.of(
                readStock.items().stream()
                        .filter(item -> item.active() && !item.type().isCountedSingly()),
                StockItem::id,
                item -> withUnit(item.name(), view.unitOf(item.baseUnit()), view)));
        return new Stock(
                location.name(),
                lotsLeft(lots.stream().filter(VanStock::isCanister), view),
                Options.of(readStock.mixes().stream().filter(Mix::active), Mix::id, Mix::name),
                lotsLeft(lots.stream().filter(lot -> !isCanister(lot)), view),
                Options.of(
                        readStock.levels(location.id()).stream()
                                .filter(level -> !level.item().type().isCountedSingly()
                                        && level.quantity().isPositive()),
                        level -> level.item().id(),
                        level -> left(level.item().name(), level.quantity(), view)),
                countable,
                Options.of(
                        locations.stream().filter(other -> !other.id().equals(location.id())),
                        Location::id,
                        Location::name));
    }

    private static Map<String, String> lotsLeft(Stream<LotLevel> lots, View view) {
        return Options.of(lots, LotLevel::lot, lot -> left(name(lot), lot.quantity(), view));
    }

    private static boolean isCanister(LotLevel lot) {
        return lot.item().type() == StockType.RESIN;
    }

    /** The item and the label of a lot. */
    static String name(LotLevel lot) {
        return (lot.item().name() + " " + lot.label()).strip();
    }

    private static String left(String name, Quantity held, View view) {
        return view.t("sheets.left", name, view.quantity(held));
    }

    /** The name of what is counted in the unit. */
    static String withUnit(String name, Unit counted, View view) {
        String unit = view.unit(counted);
        return unit.isEmpty() ? name : name + " (" + unit + ")";
    }
}
