package eaveside.web.settings;

import eaveside.catalog.Catalog;
import eaveside.catalog.SaveServiceItem;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.catalog.StandardConsumable;
import eaveside.catalog.TaxSetting;
import eaveside.catalog.TaxSettings;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Unit;
import eaveside.web.View;
import eaveside.web.forms.EditPage;
import eaveside.web.forms.EditResource;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.Listing;
import eaveside.web.forms.Options;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the company sells, with its standards: minutes, consumables, tax code and cautions. */
@Path("/settings/services")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class ServiceItemPages extends EditResource<ServiceItem, ServiceItemId> {
    /** What services are sold by, where the company measures in US customary units. */
    private static final List<Unit> SOLD_BY = List.of(Unit.PIECE, Unit.SQUARE_FOOT, Unit.FOOT, Unit.HOUR, Unit.MILE);

    @Inject
    Catalog catalog;

    @Inject
    TaxSettings taxSettings;

    @Inject
    ReadStock readStock;

    @Inject
    SaveServiceItem saveServiceItem;

    public ServiceItemPages() {
        super(ServiceItem.class, "settings.services", "/settings/services");
    }

    @Override
    protected Listing<ServiceItem> list() {
        View view = viewer.view();
        Map<ServiceLineId, String> lines =
                catalog.lines().stream().collect(Collectors.toMap(ServiceLine::id, ServiceLine::name));
        return rows(catalog::serviceItems)
                .within("settings.title", "/settings")
                .about("intro")
                .searchedBy("code", "name")
                .opening("code", service -> at(service.id()))
                .columns("name")
                .column("unit", service -> view.t("settings.unit", service.unit()))
                .column("minutesPerUnit", service -> service.minutesPerUnit().value())
                .columns("taxCode")
                .column("consumables", service -> service.consumables().size())
                .column("serviceLine", service -> lines.get(service.serviceLine()))
                .columns("active");
    }

    @Override
    protected Map<String, String> first() {
        return Map.of("unit", Unit.PIECE.code());
    }

    /** With its consumables counted as the form asks for them. */
    @Override
    protected ServiceItem stored(ServiceItemId id) {
        ServiceItem service = catalog.serviceItem(id);
        Map<String, StockItem> items = byId(readStock.items());
        List<StandardConsumable> inBaseUnits = service.consumables().stream()
                .map(use -> new StandardConsumable(use.item(), inBaseUnit(use, items)))
                .toList();
        return Records.with(service, "consumables", inBaseUnits);
    }

    /** As it is where the item is gone or counted otherwise, for somebody to mend. */
    private static Quantity inBaseUnit(StandardConsumable use, Map<String, StockItem> items) {
        StockItem item = items.get(use.item().toString());
        return item != null && use.perUnit().unit().isLike(item.baseUnit())
                ? use.perUnit().in(item.baseUnit())
                : use.perUnit();
    }

    private static Map<String, StockItem> byId(List<StockItem> items) {
        return items.stream().collect(Collectors.toMap(item -> item.id().toString(), Function.identity()));
    }

    @Override
    protected void save(ServiceItem service) {
        saveServiceItem.save(service, viewer.id());
    }

    /** With what there is to choose from; what is not active, or of the other measures, only where it is chosen already. */
    @Override
    protected EditPage page(Form<ServiceItem> form) {
        View view = viewer.view();
        Fields fields = form.fields();
        List<ServiceLine> lines = catalog.lines().stream()
                .filter(line -> line.active() || line.id().toString().equals(fields.typed("serviceLine")))
                .toList();
        List<Unit> units = Stream.concat(
                        SOLD_BY.stream().map(view::unitOf),
                        Stream.of(Unit.values()).filter(unit -> unit.code().equals(fields.typed("unit"))))
                .toList();
        List<StockItem> stock = readStock.items();
        Map<String, StockItem> items = byId(stock);
        form.choosing("serviceLine", Options.of(lines, ServiceLine::id, line -> line.code() + " · " + line.name()))
                .choosing("unit", Options.of(units, Unit::code, unit -> view.t("settings.unit", unit)))
                .choosing("taxCode", Options.of(taxSettings.all(), TaxSetting::code, tax -> taxCode(tax, view)))
                .choosing("item", Options.of(stock, StockItem::id, item -> counted(item, view)))
                .in(field -> {
                    StockItem item = items.get(fields.typed(field.replaceFirst("perUnit$", "item")));
                    return item == null ? Unit.PIECE : item.baseUnit(); // that the item is missing is told of the item
                });
        return super.page(form).shownBy("settings/service-item-form.jte");
    }

    private static String taxCode(TaxSetting tax, View view) {
        return tax.code() + " · " + view.percent(tax.rate());
    }

    private static String counted(StockItem item, View view) {
        return view.t("settings.item-in", item.name(), view.t("settings.unit", item.baseUnit()));
    }
}
