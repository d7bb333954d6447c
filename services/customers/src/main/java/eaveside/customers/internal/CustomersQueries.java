package eaveside.customers.internal;

import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
import jakarta.persistence.EntityManager;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.processing.HQL;
import org.hibernate.annotations.processing.SQL;

/** Queries over the customers; the annotation processor checks them when it compiles. */
public interface CustomersQueries {
    EntityManager entityManager();

    /** Waits for others under the key; holds it until the commit. */
    @SQL("select cast(pg_advisory_xact_lock(:key) as text)")
    String takeTurn(long key);

    @HQL("from CustomerRow where id in :ids")
    List<CustomerRow> customers(Collection<UUID> ids);

    /** What something with an id is called. */
    record Called(UUID id, String name) {}

    @HQL("select c.id, coalesce(k.customer.name, c.customer.name) from CustomerRow c "
            + "left join CustomerRow k on k.customer.id = c.mergedInto where c.id in :ids")
    List<Called> customerNames(Collection<UUID> ids);

    @HQL("select id, site.name from SiteRow where id in :ids")
    List<Called> siteNames(Collection<UUID> ids);

    @HQL("select customer.id from CustomerRow where mergedInto = :kept order by id")
    List<CustomerId> mergedInto(CustomerId kept);

    @HQL("select customer.id from CustomerRow where coalesce(mergedInto, customer.id) in "
            + "(select coalesce(c.mergedInto, c.customer.id) from CustomerRow c where c.customer.id in :customers)")
    List<CustomerId> idsOf(Collection<CustomerId> customers);

    @HQL("from ContactRow where contact.customer in :customers order by contact.active desc, contact.name, id")
    List<ContactRow> contactsOf(Collection<CustomerId> customers);

    @HQL("from SiteRow where site.customer in :customers order by site.active desc, site.name, id")
    List<SiteRow> sitesOf(Collection<CustomerId> customers);

    @HQL("from SiteRow where id in :ids")
    List<SiteRow> sites(Collection<UUID> ids);

    @HQL("from SurfaceRow s left join fetch s.attributes where s.site = :site order by s.type, s.name, s.id")
    List<SurfaceRow> surfacesOf(SiteId site);

    @HQL("from SurfaceRow s left join fetch s.attributes where s.site in :sites order by s.type, s.name, s.id")
    List<SurfaceRow> surfacesOfAll(Collection<SiteId> sites);

    @HQL("from SurfaceRow s left join fetch s.attributes where s.id in :ids")
    List<SurfaceRow> surfaces(Collection<UUID> ids);

    @HQL("from SurfaceCountRow where key.surfaceId = :surface order by key.entry")
    List<SurfaceCountRow> countsOf(UUID surface);

    @HQL("from SurfaceCountRow where key.surfaceId in :surfaces order by key.surfaceId, key.entry")
    List<SurfaceCountRow> countsOfAll(Collection<UUID> surfaces);

    @HQL("from PanelManufacturerRow order by name")
    List<PanelManufacturerRow> manufacturers();

    @HQL("select m from PanelManufacturerRow m join SurfaceRow s on s.panelManufacturer = m.name where s.id = :surface")
    List<PanelManufacturerRow> manufacturersOf(UUID surface);

    @HQL("select s.id from PanelManufacturerRow m join SurfaceRow s on s.panelManufacturer = m.name "
            + "where m.alkaliForbidden and s.id in :surfaces")
    List<UUID> surfacesForbiddingAlkali(Collection<UUID> surfaces);
}
