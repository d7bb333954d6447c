package eaveside.web.customers;

import eaveside.customers.Address;
import eaveside.customers.Contact;
import eaveside.customers.Customer;
import eaveside.customers.CustomerKind;
import eaveside.customers.CustomersRefusal;
import eaveside.customers.Editable;
import eaveside.customers.FindCustomers.CustomerLine;
import eaveside.customers.MakerName;
import eaveside.customers.ModuleMaker;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceKind;
import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.web.Json;
import eaveside.web.Json.Measured;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Customers, contacts, sites and surfaces as scripts send and get them. Each carries the version that a change must name. */
public final class CustomerJson {
    private CustomerJson() {}

    /** @param country ISO 3166-1 alpha-2 */
    public record PostalAddress(
            @Nullable String street,
            @Nullable String city,
            @Nullable String region,
            @Nullable String postalCode,
            @Nullable String country) {
        static PostalAddress of(Address a) {
            return new PostalAddress(a.street(), a.city(), a.region(), a.postalCode(), a.country());
        }

        static Address read(@Nullable PostalAddress there) {
            PostalAddress a = Json.required("address", there);
            return new Address(
                    Json.optional(a.street),
                    Json.optional(a.city),
                    Json.optional(a.region),
                    Json.optional(a.postalCode),
                    Json.required("country", a.country));
        }
    }

    /** A customer in a list. */
    public record Line(String id, String name, String kind, String city, String phone, String email, boolean active) {
        static Line of(CustomerLine c) {
            return new Line(c.id().toString(), c.name(), c.kind().name(), c.city(), c.phone(), c.email(), c.active());
        }
    }

    /** A page of the list; ask for more with {@code after=next}. */
    public record Lines(List<Line> customers, @Nullable String next) {}

    /**
     * A customer's own data.
     *
     * @param kind   HOUSEHOLD or BUSINESS
     * @param active true where absent
     */
    public record CustomerBody(
            @Nullable String id,
            @Nullable String name,
            @Nullable String kind,
            @Nullable PostalAddress address,
            @Nullable String email,
            @Nullable String phone,
            @Nullable Integer paymentTermDays,
            @Nullable String note,
            @Nullable Boolean active,
            @Nullable Integer version) {
        static CustomerBody of(Customer c) {
            return new CustomerBody(
                    c.id().toString(),
                    c.name(),
                    c.kind().name(),
                    PostalAddress.of(c.billingAddress()),
                    c.email(),
                    c.phone(),
                    c.paymentTermDays(),
                    c.note(),
                    c.active(),
                    c.version());
        }

        Customer read(CustomerId customer) {
            return new Customer(
                    customer,
                    Json.required("name", name),
                    Json.choice("kind", CustomerKind.class, kind),
                    PostalAddress.read(address),
                    Json.optional(email),
                    Json.optional(phone),
                    Json.required("paymentTermDays", paymentTermDays),
                    Json.optional(note),
                    active == null || active,
                    version == null ? 0 : version);
        }
    }

    /**
     * Somebody to talk to at a customer's.
     *
     * @param role   such as caretaker or accounts
     * @param active true where absent
     */
    public record ContactBody(
            @Nullable String id,
            @Nullable String name,
            @Nullable String role,
            @Nullable String email,
            @Nullable String phone,
            @Nullable Boolean active,
            @Nullable Integer version) {
        static ContactBody of(Contact c) {
            return new ContactBody(
                    c.id().toString(), c.name(), c.role(), c.email(), c.phone(), c.active(), c.version());
        }

        Contact read(ContactId contact, CustomerId customer) {
            return new Contact(
                    contact,
                    customer,
                    Json.required("name", name),
                    Json.optional(role),
                    Json.optional(email),
                    Json.optional(phone),
                    active == null || active,
                    version == null ? 0 : version);
        }
    }

    /** @param active true where absent */
    public record SiteBody(
            @Nullable String id,
            @Nullable String name,
            @Nullable PostalAddress address,
            @Nullable String accessNotes,
            @Nullable String hazards,
            @Nullable Boolean waterOnSite,
            @Nullable Boolean active,
            @Nullable Integer version) {
        static SiteBody of(Site s) {
            return new SiteBody(
                    s.id().toString(),
                    s.name(),
                    PostalAddress.of(s.address()),
                    s.accessNotes(),
                    s.hazards(),
                    s.waterOnSite(),
                    s.active(),
                    s.version());
        }

        Site read(SiteId site, CustomerId customer) {
            return new Site(
                    site,
                    customer,
                    Json.required("name", name),
                    PostalAddress.read(address),
                    Json.optional(accessNotes),
                    Json.optional(hazards),
                    waterOnSite != null && waterOnSite,
                    active == null || active,
                    version == null ? 0 : version);
        }
    }

    /**
     * A surface.
     *
     * @param kind       ARRAY, SKYLIGHT, WINDOW or ROOF
     * @param rows       of an array; 1 where absent
     * @param attributes whole numbers by attribute, such as STOREY
     * @param active     true where absent
     */
    public record SurfaceBody(
            @Nullable String id,
            @Nullable String kind,
            @Nullable String name,
            @Nullable Measured extent,
            @Nullable Integer rows,
            @Nullable String moduleMaker,
            @Nullable Map<String, Integer> attributes,
            @Nullable Boolean active,
            @Nullable Integer version) {
        static SurfaceBody of(Surface s) {
            Map<String, Integer> attributes = new LinkedHashMap<>();
            s.attributes().forEach((attribute, value) -> attributes.put(attribute.name(), value));
            MakerName maker = s.moduleMaker();
            return new SurfaceBody(
                    s.id().toString(),
                    s.kind().name(),
                    s.name(),
                    Measured.of(s.extent()),
                    s.rows(),
                    maker == null ? null : maker.value(),
                    attributes,
                    s.active(),
                    s.version());
        }

        Surface read(SurfaceId surface, SiteId site) {
            SurfaceKind surfaceKind = Json.choice("kind", SurfaceKind.class, kind);
            Map<SurfaceAttribute, Integer> known = new EnumMap<>(SurfaceAttribute.class);
            if (attributes != null) {
                attributes.forEach((name, value) -> known.put(
                        Json.choice("attributes", SurfaceAttribute.class, name),
                        Json.required("attributes." + name, value)));
            }
            return new Surface(
                    surface,
                    site,
                    surfaceKind,
                    Json.required("name", name),
                    Json.quantity("extent", extent),
                    rows == null ? surfaceKind == SurfaceKind.ARRAY ? 1 : 0 : rows,
                    moduleMaker == null ? null : new MakerName(moduleMaker),
                    known,
                    active == null || active,
                    version == null ? 0 : version);
        }
    }

    /** A site with its surfaces. */
    public record SiteWhole(SiteBody site, List<SurfaceBody> surfaces) {}

    /** A customer with all that belongs to it. */
    public record CustomerWhole(CustomerBody customer, List<ContactBody> contacts, List<SiteWhole> sites) {}

    /**
     * Problem details (RFC 9457) of an edit that another overtook, with both contents.
     *
     * @param stored what is stored now, with the version that the next change must name
     * @param sent   what was not saved
     */
    public record Overtaken(String type, String title, int status, List<String> fields, Object stored, Object sent) {
        static Overtaken of(CustomersRefusal.EditedMeanwhile refusal) {
            return new Overtaken(
                    "urn:eaveside:refusal:" + refusal.code(),
                    refusal.text(),
                    refusal.kind().status(),
                    refusal.fields(),
                    body(refusal.theirs()),
                    body(refusal.yours()));
        }

        private static Object body(Editable content) {
            return switch (content) {
                case Customer customer -> CustomerBody.of(customer);
                case Contact contact -> ContactBody.of(contact);
                case Site site -> SiteBody.of(site);
                case Surface surface -> SurfaceBody.of(surface);
                case ModuleMaker maker -> maker.name().value();
            };
        }
    }
}
