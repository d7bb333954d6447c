package eaveside.customers.internal;

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

    @HQL("select id from CustomerRow where mergedInto = :kept order by id")
    List<UUID> mergedInto(UUID kept);

    @HQL("select id from CustomerRow where coalesce(mergedInto, id) in "
            + "(select coalesce(c.mergedInto, c.id) from CustomerRow c where c.id in :customers)")
    List<UUID> idsOf(Collection<UUID> customers);

    @HQL("from ContactRow where customerId in :customers order by active desc, name, id")
    List<ContactRow> contactsOf(Collection<UUID> customers);

    @HQL("from SiteRow where customerId in :customers order by active desc, name, id")
    List<SiteRow> sitesOf(Collection<UUID> customers);

    @HQL("from SiteRow where id in :ids")
    List<SiteRow> sites(Collection<UUID> ids);

    @HQL("from SurfaceRow s left join fetch s.attributes where s.siteId = :site order by s.type, s.name, s.id")
    List<SurfaceRow> surfacesOf(UUID site);

    @HQL("from SurfaceRow s left join fetch s.attributes where s.siteId in :sites order by s.type, s.name, s.id")
    List<SurfaceRow> surfacesOfAll(Collection<UUID> sites);

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
