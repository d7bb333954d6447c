package eaveside.demo;

import static java.util.Map.entry;

import eaveside.customers.Address;
import eaveside.customers.Contact;
import eaveside.customers.Customer;
import eaveside.customers.CustomerType;
import eaveside.customers.ManufacturerName;
import eaveside.customers.PanelManufacturer;
import eaveside.customers.SaveContact;
import eaveside.customers.SaveCustomer;
import eaveside.customers.SavePanelManufacturer;
import eaveside.customers.SaveSite;
import eaveside.customers.SaveSurface;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceType;
import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Quantity;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Enters the customers with their sites and surfaces, and the manufacturers of their modules. */
@Dependent
class Clients {
    private static final List<ManufacturerName> MANUFACTURERS = List.of(
            new ManufacturerName("Solwick"), new ManufacturerName("Brightfell"), new ManufacturerName("Sunmarrow"));

    private final SaveCustomer saveCustomer;
    private final SaveContact saveContact;
    private final SaveSite saveSite;
    private final SaveSurface saveSurface;
    private final SavePanelManufacturer savePanelManufacturer;
    private int phone = 100;

    @Inject
    Clients(
            SaveCustomer saveCustomer,
            SaveContact saveContact,
            SaveSite saveSite,
            SaveSurface saveSurface,
            SavePanelManufacturer savePanelManufacturer) {
        this.saveCustomer = saveCustomer;
        this.saveContact = saveContact;
        this.saveSite = saveSite;
        this.saveSurface = saveSurface;
        this.savePanelManufacturer = savePanelManufacturer;
    }

    void enterManufacturers(UserId by) {
        savePanelManufacturer.save(
                new PanelManufacturer(
                        MANUFACTURERS.get(0), 75, 3_500, 20, false, "Installation manual, care of modules", 0),
                by);
        savePanelManufacturer.save(
                new PanelManufacturer(
                        MANUFACTURERS.get(1), 180, 4_000, null, true, "Manual rev. 4, cleaning: no alkali", 0),
                by);
        savePanelManufacturer.save(
                new PanelManufacturer(MANUFACTURERS.get(2), null, 690, 25, false, "Care leaflet", 0), by);
    }

    /** The one with two sites that the guide's first steps use; nothing has been done at the first of them yet. */
    List<DemoSite> enterFennimore(UserId by) {
        Address home = address("14 Tern Lane");
        CustomerId customer = customer("Odalys Fennimore", CustomerType.HOUSEHOLD, home, 14, by);
        contact(customer, "Bastian Fennimore", "at home on weekdays", by);
        SiteId house = site(
                customer,
                "Home",
                home,
                "Gate code at the office. Park below the garage; the tap is behind the hydrangeas.",
                "Power line along the west side. Slate path is slippery when wet. Dog, friendly.",
                by);
        List<Surface> atHome = List.of(
                surface(
                        house,
                        SurfaceType.ARRAY,
                        "South roof, two rows",
                        Quantity.of(48, Unit.PIECE),
                        2,
                        MANUFACTURERS.get(1),
                        Map.ofEntries(
                                entry(SurfaceAttribute.STORY, 2),
                                entry(SurfaceAttribute.PITCH_DEGREES, 28),
                                entry(SurfaceAttribute.SOILING_GRADE, 2),
                                entry(SurfaceAttribute.YEARS_SINCE_CLEAN, 3)),
                        by),
                surface(
                        house,
                        SurfaceType.SKYLIGHT,
                        "Stair and studio",
                        Quantity.of(6, Unit.PIECE),
                        0,
                        null,
                        Map.of(SurfaceAttribute.STORY, 2, SurfaceAttribute.SOILING_GRADE, 1),
                        by),
                surface(
                        house,
                        SurfaceType.WINDOW,
                        "Ground and upper floor",
                        Quantity.of(22, Unit.PIECE),
                        0,
                        null,
                        Map.of(SurfaceAttribute.STORY, 2, SurfaceAttribute.HARD_WATER, 1),
                        by),
                surface(
                        house,
                        SurfaceType.ROOF,
                        "Shingle roof",
                        Quantity.of(1_900, Unit.SQUARE_FOOT),
                        0,
                        null,
                        Map.of(SurfaceAttribute.PITCH_DEGREES, 28, SurfaceAttribute.GROWTH_GRADE, 2),
                        by));
        Address cottage = address("2 Weir Street");
        SiteId rental =
                site(customer, "Rental cottage", cottage, "Key box by the door.", "Low beam over the gate.", by);
        List<Surface> atCottage = List.of(
                surface(
                        rental,
                        SurfaceType.WINDOW,
                        "All around",
                        Quantity.of(14, Unit.PIECE),
                        0,
                        null,
                        Map.of(SurfaceAttribute.STORY, 1),
                        by),
                surface(
                        rental,
                        SurfaceType.SKYLIGHT,
                        "Attic",
                        Quantity.of(2, Unit.PIECE),
                        0,
                        null,
                        Map.of(SurfaceAttribute.STORY, 2),
                        by));
        return List.of(
                new DemoSite(customer, house, "Ms. Fennimore", false, 11, atHome),
                new DemoSite(customer, rental, "Ms. Fennimore", false, 8, atCottage));
    }

    DemoSite enterField(UserId by) {
        Address address = address("County Road 9");
        CustomerId customer = customer("Yarrow Flats Sun Field", CustomerType.BUSINESS, address, 30, by);
        contact(customer, "Ansel Grebe", "field keeper", by);
        SiteId field = site(
                customer,
                "Field",
                address,
                "Gate on the county road; ask for the key the day before. Water comes in our tank.",
                "Rattlesnakes in summer. Trenches between rows 3 and 4. Inverter house is off limits.",
                by);
        List<Surface> rows = new ArrayList<>();
        for (String part : List.of("East half", "West half")) {
            rows.add(surface(
                    field,
                    SurfaceType.ARRAY,
                    part,
                    Quantity.of(180, Unit.PIECE),
                    5,
                    MANUFACTURERS.get(0),
                    Map.of(
                            SurfaceAttribute.GROUND_MOUNT, 1,
                            SurfaceAttribute.SOILING_GRADE, 2,
                            SurfaceAttribute.ROW_ACCESS, 0),
                    by));
        }
        return new DemoSite(customer, field, "Mr. Grebe", true, 34, rows);
    }

    DemoSite enterHousehold(int number, Dice dice, UserId by) {
        // Past the end of the first names the last names are shifted by one, so that no two households have one name.
        String last = Names.LAST.get((number + number / Names.FIRST.size()) % Names.LAST.size());
        Address address = address(dice.between(1, 98) + " " + dice.oneOf(Names.STREETS));
        String name = Names.FIRST.get(number % Names.FIRST.size()) + " " + last;
        CustomerId customer = customer(name, CustomerType.HOUSEHOLD, address, 14, by);
        SiteId site = site(customer, "Home", address, dice.oneOf(Names.ACCESS), dice.oneOf(Names.HAZARDS), by);
        List<Surface> surfaces = new ArrayList<>();
        if (dice.percent(72)) {
            surfaces.add(array(site, dice.between(12, 40), dice, by));
        }
        if (surfaces.isEmpty() || dice.percent(60)) {
            surfaces.add(windows(site, dice.between(12, 38), dice, by));
        }
        if (dice.percent(35)) {
            surfaces.add(skylights(site, dice.between(2, 8), dice, by));
        }
        if (dice.percent(32)) {
            surfaces.add(roof(site, dice.between(24, 52) * 50, dice, by));
        }
        return new DemoSite(customer, site, "the owner", false, dice.between(4, 26), surfaces);
    }

    DemoSite enterBusiness(int number, Dice dice, UserId by) {
        Address address = address(dice.between(1, 98) + " " + dice.oneOf(Names.STREETS));
        CustomerId customer =
                customer(Names.BUSINESSES.get(number), CustomerType.BUSINESS, address, dice.percent(50) ? 30 : 21, by);
        String caretaker = dice.oneOf(Names.FIRST) + " " + dice.oneOf(Names.LAST);
        contact(customer, caretaker, dice.percent(50) ? "caretaker" : "accounts", by);
        SiteId site = site(customer, "Main building", address, dice.oneOf(Names.ACCESS), dice.oneOf(Names.HAZARDS), by);
        List<Surface> surfaces = new ArrayList<>();
        surfaces.add(windows(site, dice.between(20, 96), dice, by));
        if (dice.percent(45)) {
            surfaces.add(array(site, dice.between(30, 120), dice, by));
        }
        if (dice.percent(35)) {
            surfaces.add(skylights(site, dice.between(4, 14), dice, by));
        }
        return new DemoSite(customer, site, caretaker, true, dice.between(3, 22), surfaces);
    }

    private Surface array(SiteId site, int panels, Dice dice, UserId by) {
        Map<SurfaceAttribute, Integer> attributes = new EnumMap<>(SurfaceAttribute.class);
        attributes.put(SurfaceAttribute.STORY, dice.between(1, 3));
        attributes.put(SurfaceAttribute.PITCH_DEGREES, dice.between(3, 8) * 5);
        attributes.put(SurfaceAttribute.SOILING_GRADE, dice.between(0, 3));
        attributes.put(SurfaceAttribute.YEARS_SINCE_CLEAN, dice.between(0, 5));
        attributes.put(SurfaceAttribute.ROW_ACCESS, dice.between(0, 2));
        return surface(
                site,
                SurfaceType.ARRAY,
                dice.percent(60) ? "South roof" : "Garage roof",
                Quantity.of(panels, Unit.PIECE),
                dice.between(1, 4),
                dice.percent(75) ? dice.oneOf(MANUFACTURERS) : null,
                attributes,
                by);
    }

    private Surface windows(SiteId site, int panes, Dice dice, UserId by) {
        Map<SurfaceAttribute, Integer> attributes = new EnumMap<>(SurfaceAttribute.class);
        attributes.put(SurfaceAttribute.STORY, dice.between(1, 4));
        attributes.put(SurfaceAttribute.HARD_WATER, dice.between(0, 2));
        if (dice.percent(20)) {
            attributes.put(SurfaceAttribute.DIVIDED_PANES, 1);
        }
        return surface(site, SurfaceType.WINDOW, "All floors", Quantity.of(panes, Unit.PIECE), 0, null, attributes, by);
    }

    private Surface skylights(SiteId site, int count, Dice dice, UserId by) {
        return surface(
                site,
                SurfaceType.SKYLIGHT,
                dice.percent(50) ? "Roof windows" : "Hall",
                Quantity.of(count, Unit.PIECE),
                0,
                null,
                Map.of(SurfaceAttribute.STORY, dice.between(1, 3), SurfaceAttribute.WEAK_SEALS, dice.between(0, 1)),
                by);
    }

    private Surface roof(SiteId site, int squareFeet, Dice dice, UserId by) {
        return surface(
                site,
                SurfaceType.ROOF,
                dice.percent(70) ? "Shingle roof" : "Tile roof",
                Quantity.of(squareFeet, Unit.SQUARE_FOOT),
                0,
                null,
                Map.of(
                        SurfaceAttribute.PITCH_DEGREES,
                        dice.between(3, 8) * 5,
                        SurfaceAttribute.GROWTH_GRADE,
                        dice.between(0, 4)),
                by);
    }

    private CustomerId customer(String name, CustomerType type, Address address, int termDays, UserId by) {
        CustomerId id = CustomerId.next();
        saveCustomer.save(Customer.of(id, name, type, address, termDays).reached(email(name), nextPhone()), by);
        return id;
    }

    private void contact(CustomerId customer, String name, String role, UserId by) {
        saveContact.save(new Contact(ContactId.next(), customer, name, role, email(name), nextPhone(), true, 0), by);
    }

    private SiteId site(CustomerId customer, String name, Address address, String access, String hazards, UserId by) {
        SiteId id = SiteId.next();
        boolean water = !access.contains("in our tank");
        saveSite.save(new Site(id, customer, name, address, access, hazards, water, true, 0), by);
        return id;
    }

    private Surface surface(
            SiteId site,
            SurfaceType type,
            String name,
            Quantity extent,
            int rows,
            @Nullable ManufacturerName manufacturer,
            Map<SurfaceAttribute, Integer> attributes,
            UserId by) {
        return saveSurface.save(
                new Surface(SurfaceId.next(), site, type, name, extent, rows, manufacturer, attributes, true, 0), by);
    }

    private static Address address(String street) {
        return new Address(street, Employment.TOWN, "QX", Employment.ZIP_CODE, "US");
    }

    private static String email(String name) {
        return name.toLowerCase(Locale.ROOT).replace(" and ", " ").replace(' ', '.') + "@example.com";
    }

    /** 555-0100 to 555-0199 are kept free for fiction; 555-0100 is the company's own. */
    private String nextPhone() {
        phone = phone == 199 ? 101 : phone + 1;
        return "555-0" + phone;
    }
}
