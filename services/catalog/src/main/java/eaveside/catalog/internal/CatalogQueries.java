package eaveside.catalog.internal;

import jakarta.persistence.EntityManager;
import java.util.List;
import org.hibernate.annotations.processing.HQL;
import org.hibernate.annotations.processing.SQL;

/** Queries over the services; the annotation processor checks them when it compiles. */
public interface CatalogQueries {
    /** Edits of the catalog are few and look at one another's codes and dates, so they take turns. */
    long CATALOG = 0x6f66666572696e67L;

    EntityManager entityManager();

    /** Waits for other edits under the key; holds it until the commit. */
    @SQL("select cast(pg_advisory_xact_lock(:key) as text)")
    String takeTurn(long key);

    @HQL("from ServiceLineRow order by line.code")
    List<ServiceLineRow> lines();

    @HQL("from ServiceLineRow where line.code = :code")
    List<ServiceLineRow> linesCoded(String code);

    @HQL("from ServiceItemRow o left join fetch o.consumables order by o.code")
    List<ServiceItemRow> serviceItems();

    @HQL("from ServiceItemRow where code = :code")
    List<ServiceItemRow> serviceItemsCoded(String code);

    /** The newest day first, and of one day the last entry first. */
    @HQL("from TaxSettingRow where key.code = :code order by key.from desc, key.entry desc")
    List<TaxSettingRow> taxSettingsOf(String code);

    @HQL("from TaxSettingRow t where t.key.entry = (select max(o.key.entry) from TaxSettingRow o "
            + "where o.key.code = t.key.code and o.key.from = t.key.from) order by t.key.code, t.key.from desc")
    List<TaxSettingRow> taxSettings();
}
