package eaveside.inventory.internal;

import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.StockItemId;
import jakarta.persistence.EntityManager;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.processing.HQL;
import org.hibernate.annotations.processing.SQL;
import org.hibernate.query.Page;

/** Queries over the inventory; the annotation processor checks them when it compiles. */
public interface StockQueries {
    EntityManager entityManager();

    @SQL("select id from location where id in (:locations) order by id for no key update")
    List<UUID> lockLocations(List<UUID> locations);

    @SQL("select lot_id from lot_stock where location_id = :location and item_id in (:items) and quantity > 0"
            + " order by lot_id for update")
    List<UUID> lockLots(UUID location, List<UUID> items);

    @HQL("select name, active from LocationRow where id = :location")
    LocationState locationState(UUID location);

    @HQL("select l.id, l.itemId, l.label, l.receivedOn, l.quantity.value, s.quantity, s.value from LotStockRow s "
            + "join LotRow l on l.id = s.key.lotId "
            + "where s.key.locationId = :location and s.itemId in :items and (s.quantity > 0 or l.id in :emptied) "
            + "order by l.receivedOn, l.postingDate, l.arrival")
    List<LotInLocation> lotsOnHand(UUID location, List<StockItemId> items, Collection<UUID> emptied);

    @HQL("select e.lotId, sum(e.quantity), sum(e.value) from StockEntryRow e "
            + "where e.locationId = :location and e.itemId in :items and e.postingDate > :day "
            + "group by e.lotId, e.postingDate order by e.lotId, e.postingDate desc")
    List<LaterDay> laterDays(LocationId location, List<StockItemId> items, LocalDate day);

    /** The day on which the lot came in, where that is later than the day given. */
    @HQL("select postingDate from LotRow where id = :lot and postingDate > :day")
    List<LocalDate> cameAfter(UUID lot, LocalDate day);

    @HQL("select m.lotId, sum(m.quantity.value) from MovementRow m where m.locationId = :location and m.itemId = :item "
            + "and m.postingDate > :day and m.movedOn > :day group by m.lotId")
    List<LotMoved> movedAfter(LocationId location, StockItemId item, LocalDate day);

    /** When and by which documents the lot came into the location, the first first. */
    @HQL("select m.key.documentId, m.movedOn from MovementRow m where m.locationId = :location and m.lotId = :lot "
            + "and m.quantity.value > 0 order by m.postingDate, m.movedOn, m.key.documentId, m.key.line")
    List<LotCame> lotCame(LocationId location, LotId lot);

    /** The same of one lot, but for its coming in: who counts a lot has it before him, whatever day its papers say. */
    @HQL("select m.lotId, sum(m.quantity.value) from MovementRow m where m.locationId = :location and m.lotId = :lot "
            + "and m.key.documentId <> :cameBy and m.postingDate > :day and m.movedOn > :day group by m.lotId")
    List<LotMoved> lotMovedAfter(LocationId location, LotId lot, UUID cameBy, LocalDate day);

    @HQL("select i.id, sum(s.quantity), sum(s.value) from LotStockRow s join StockItemRow i on i.id = s.itemId "
            + "where s.key.locationId = :location and s.quantity > 0 group by i.id")
    List<ItemInLocation> itemsIn(UUID location);

    @HQL("select count(*) from LotStockRow where key.locationId = :location and quantity > 0")
    long stockedLots(UUID location);

    @HQL("from StockEntryRow where key.documentId = :document order by key.line")
    List<StockEntryRow> entriesOf(UUID document);

    @HQL("select coalesce(max(key.line), 0) from StockEntryRow where key.documentId = :document")
    int lastLineOf(UUID document);

    @HQL("update LotRow set withdrawn = true where documentId = :document")
    int withdrawLots(DocumentId document);

    @HQL("from LotRow where itemId = :item and label = :label and not withdrawn")
    List<LotRow> lotsLabeled(StockItemId item, String label);

    @HQL("from LotRow l where l.itemId = :item and not l.withdrawn and l.value > 0 and exists "
            + "(select 1 from LotStockRow s where s.key.lotId = l.id and s.key.locationId = :location) "
            + "order by l.receivedOn desc, l.postingDate desc, l.arrival desc limit 1")
    List<LotRow> newestCostedLotIn(UUID location, StockItemId item);

    @HQL("from LotRow where itemId = :item and not withdrawn and value > 0 "
            + "order by receivedOn desc, postingDate desc, arrival desc limit 1")
    List<LotRow> newestCostedLot(StockItemId item);

    /** Items of which each word begins a word, or comes close to one; the best first. */
    @SQL(
            "select i.* from stock_item i cross join lateral (select bool_and(n.words like '% ' || w.word || '%') as spelled, "
                    + "sum(word_similarity(w.word, n.words)) as closeness, min(word_similarity(w.word, n.words)) as farthest "
                    + "from (select search_words(i.code || ' ' || i.name) as words) n, "
                    + "unnest(string_to_array(btrim(search_words(:text)), ' ')) w(word)) f "
                    + "where f.spelled or f.farthest > 0.45 order by f.spelled desc, i.active desc, f.closeness desc, i.name limit :most")
    List<StockItemRow> itemsLike(String text, int most);

    @HQL(
            "from LotRow where lower(label) like :beginning and label <> '' and not withdrawn order by receivedOn desc, id desc")
    List<LotRow> lotsBeginning(String beginning, Page page);

    @HQL("select i from StockItemRow i left join fetch i.packs order by i.name, i.id")
    List<StockItemRow> items();

    @HQL("select p from LocationRow p left join fetch p.technicians order by p.type, p.name")
    List<LocationRow> locations();

    @HQL("select p from LocationRow p join p.technicians t where t = :technician")
    List<LocationRow> vansOf(UUID technician);

    @HQL("from MixRow order by mix.name, id")
    List<MixRow> mixes();

    @HQL("from ReorderPointRow where key.locationId = :location")
    List<ReorderPointRow> reorderPointsOf(UUID location);

    @HQL("from ReorderPointRow where key.itemId = :item")
    List<ReorderPointRow> reorderPointsFor(UUID item);

    @HQL("select code from StockItemRow where code = :code and id <> :id")
    List<String> otherItemsCoded(String code, UUID id);

    @HQL("select (select count(*) from LotRow l where l.itemId = :item) "
            + "+ (select count(*) from MixRow m where m.mix.concentrate = :concentrate) "
            + "+ (select count(*) from ReorderPointRow n where n.key.itemId = :item)")
    long usesOfItem(UUID item, StockItemId concentrate);

    @HQL("select name from LocationRow where name = :name and id <> :id")
    List<String> otherLocationsNamed(String name, UUID id);

    @HQL("select p.name from LocationRow p join p.technicians t where t in :technicians and p.id <> :id")
    List<String> otherVansOf(List<UUID> technicians, UUID id);

    @HQL("select mix.name from MixRow where mix.name = :name and id <> :id")
    List<String> otherMixesNamed(String name, UUID id);

    /** A location as it is now. */
    record LocationState(String name, boolean active) {}

    /** What a location holds of a lot. */
    record LotInLocation(
            UUID lot,
            StockItemId item,
            String label,
            LocalDate receivedOn,
            BigDecimal received,
            BigDecimal quantity,
            BigDecimal value) {}

    /** What a location gained (above zero) or lost of a lot on one day. */
    record LaterDay(LotId lot, BigDecimal quantity, BigDecimal value) {}

    /** What a location gained (above zero) or lost of a lot over some days. */
    record LotMoved(LotId lot, BigDecimal quantity) {}

    record LotCame(UUID document, LocalDate on) {}

    /** What a location holds of an item. */
    record ItemInLocation(UUID item, BigDecimal quantity, BigDecimal value) {}

    @HQL("from VehicleRow order by vehicle.active desc, vehicle.name, id")
    List<VehicleRow> vehicles();

    @HQL("from VehicleRow where vehicle.name = :name and id <> :id")
    List<VehicleRow> otherVehiclesNamed(String name, UUID id);
}
