package eaveside.customers;

import eaveside.kernel.CustomerId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.testing.Bench;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The small language of the customers' tests: everybody lives in an invented town. */
final class CustomersFixture {
    static final UserId OFFICE = UserId.next();

    private CustomersFixture() {}

    static Address address(String street) {
        return new Address(street, "Gutterby", "", "00001", "US");
    }

    static Customer customer(String name) {
        return Customer.of(CustomerId.next(), name, CustomerType.HOUSEHOLD, address("1 Eaves Road"), 30);
    }

    static Customer with(Customer customer, String phone, String note) {
        return Records.with(customer.reached(customer.email(), phone), "note", note);
    }

    static Site site(CustomerId customer, String name) {
        return new Site(
                SiteId.next(), customer, name, address("2 Ridge Lane"), "Key at the gate", "Pond", true, true, 0);
    }

    static Site savedSite(Bench bench, String customerName) {
        Customer customer = bench.get(SaveCustomer.class).save(customer(customerName), OFFICE);
        return bench.get(SaveSite.class).save(site(customer.id(), "Home"), OFFICE);
    }

    static Surface array(SiteId site, int panels, int rows, @Nullable ManufacturerName manufacturer) {
        return new Surface(
                SurfaceId.next(),
                site,
                SurfaceType.ARRAY,
                "South array",
                Quantity.of(panels, Unit.PIECE),
                rows,
                manufacturer,
                Map.of(SurfaceAttribute.STORY, 2, SurfaceAttribute.PITCH_DEGREES, 25),
                true,
                0);
    }

    static Surface skylights(SiteId site, int pieces) {
        return surface(site, SurfaceType.SKYLIGHT, Quantity.of(pieces, Unit.PIECE), Map.of());
    }

    static Surface surface(SiteId site, SurfaceType type, Quantity extent, Map<SurfaceAttribute, Integer> attributes) {
        return new Surface(SurfaceId.next(), site, type, "Surface", extent, 0, null, attributes, true, 0);
    }

    static PanelManufacturer manufacturer(String name, @Nullable Integer kpa, boolean alkaliForbidden) {
        return new PanelManufacturer(
                new ManufacturerName(name), null, kpa, null, alkaliForbidden, "Installation manual", 0);
    }
}
