package eaveside.demo;

import eaveside.kernel.LocationId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Fills an empty database with the demo company. */
@Dependent
public class LoadDemoCompany {
    private static final ZoneId ZONE = ZoneId.of(Employment.ZONE);
    private static final long SEED = 20_260;
    private static final int HOUSEHOLDS = 40;
    private static final int MONTHS = 3;
    /** So that the crews of today find resin in their vans whatever day the demo is made on. */
    private static final int GRAINS_FOR_A_DAY = 2_500;

    private final Employment employment;
    private final Selling selling;
    private final Storage storage;
    private final Clients clients;
    private final Bookkeeping bookkeeping;
    private final Plot plot;
    private final Clock clock;

    @Inject
    LoadDemoCompany(
            Employment employment,
            Selling selling,
            Storage storage,
            Clients clients,
            Bookkeeping bookkeeping,
            Plot plot,
            Clock clock) {
        this.employment = employment;
        this.selling = selling;
        this.storage = storage;
        this.clients = clients;
        this.bookkeeping = bookkeeping;
        this.plot = plot;
        this.clock = clock;
    }

    /**
     * Makes the company and its history up to now, each use case in a transaction of its own. The same again on the same
     * day gives the same history, but for ids and passwords. Refuses, as founding does, where there is a company.
     *
     * @param  time what the injected clock follows while this runs
     */
    public List<DemoUser> load(DemoTime time) {
        return load(time, MONTHS);
    }

    List<DemoUser> load(DemoTime time, int months) {
        Instant present = clock.instant();
        LocalDate from = present.atZone(ZONE).toLocalDate().minusMonths(months).withDayOfMonth(1);
        Agenda agenda = new Agenda(ZONE, from, present);
        time.moveTo(from.atTime(LocalTime.of(8, 0)).atZone(ZONE).toInstant());
        employment.found(from);
        Staff staff = employment.employ();
        Map<Goods, StockItemId> goods = storage.list(staff.owner());
        Depots depots = storage.furnish(goods, staff);
        selling.setTaxes(from, staff.owner());
        selling.setRates(from, "31.50", "0.68", "13.00", staff.owner());
        Range range = selling.offer(goods, staff.owner());
        selling.publishPrices(selling.draftPrices("Prices of " + from, from, 100, range, staff.owner()), staff.owner());
        storage.receive(depots, from, firstDelivery(), 100, staff.biller());
        Dice dice = new Dice(SEED);
        List<DemoSite> sites = enterCustomers(dice, staff.scheduler());
        Scene scene = new Scene(from, staff, depots, range, sites, agenda, dice);
        plot.note(scene);
        bookkeeping.note(scene);
        noteStock(scene);
        noteNewPrices(scene);
        agenda.run(time);
        return staff.usernames();
    }

    private void noteStock(Scene scene) {
        Agenda agenda = scene.agenda();
        for (LocationId van : scene.depots().vans()) {
            agenda.note(scene.from(), LocalTime.of(10, 0), () -> storage.load(scene, van));
        }
        for (LocalDate day = scene.from(); day.isBefore(agenda.today()); day = day.plusDays(1)) {
            if (day.getDayOfWeek() == DayOfWeek.FRIDAY) {
                LocalDate friday = day;
                scene.depots()
                        .vans()
                        .forEach(van ->
                                agenda.note(friday, LocalTime.of(17, 30), () -> storage.writeOffSpent(scene, van)));
            }
        }
        for (LocationId van : scene.depots().vans()) {
            agenda.note(
                    agenda.workdayBefore(agenda.today(), 1),
                    LocalTime.of(17, 45),
                    () -> storage.single(scene, storage.look(van), Goods.RESIN, GRAINS_FOR_A_DAY));
        }
        for (LocalDate month = scene.from().plusMonths(1);
                !month.isAfter(agenda.today());
                month = month.plusMonths(1)) {
            agenda.note(agenda.workdayBefore(month, 1), LocalTime.of(16, 40), () -> storage.count(scene));
        }
        agenda.note(agenda.workdayBefore(agenda.today(), 33), LocalTime.of(8, 30), () -> storage.receiveWrongly(scene));
        agenda.note(
                agenda.workdayBefore(agenda.today(), 19), LocalTime.of(8, 40), () -> bookkeeping.postWrongly(scene));
    }

    /** Dearer work and dearer prices since a few weeks ago, and a list for later that is still a draft. */
    private void noteNewPrices(Scene scene) {
        Agenda agenda = scene.agenda();
        UserId owner = scene.staff().owner();
        LocalDate prices = agenda.today().minusDays(40);
        LocalDate rates = agenda.today().minusDays(31);
        agenda.note(
                prices.minusDays(6),
                LocalTime.of(18, 0),
                () -> selling.publishPrices(
                        selling.draftPrices("Prices of " + prices, prices, 106, scene.range(), owner), owner));
        agenda.note(
                rates.minusDays(9),
                LocalTime.of(18, 10),
                () -> selling.setRates(rates, "33.20", "0.72", "13.50", owner));
        LocalDate later = agenda.today().plusMonths(2).withDayOfMonth(1);
        agenda.note(
                agenda.workdayBefore(agenda.today(), 2),
                LocalTime.of(18, 20),
                () -> selling.draftPrices("Prices of " + later, later, 109, scene.range(), owner));
    }

    private static Map<Goods, Integer> firstDelivery() {
        Map<Goods, Integer> packs = new EnumMap<>(Goods.class);
        for (Goods what : Goods.values()) {
            packs.put(what, what.type.isCountedSingly() ? 6 : 5);
        }
        return packs;
    }

    private List<DemoSite> enterCustomers(Dice dice, UserId by) {
        clients.enterManufacturers(by);
        List<DemoSite> sites = new ArrayList<>(clients.enterFennimore(by));
        sites.add(clients.enterField(by));
        for (int i = 0; i < HOUSEHOLDS; i++) {
            sites.add(clients.enterHousehold(i, dice, by));
        }
        for (int i = 0; i < Names.BUSINESSES.size(); i++) {
            sites.add(clients.enterBusiness(i, dice, by));
        }
        return List.copyOf(sites);
    }
}
