package eaveside.demo;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Money;
import eaveside.ledger.AccountCode;
import eaveside.ledger.ClosePeriod;
import eaveside.ledger.PostJournal;
import eaveside.ledger.ReverseDocument;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.YearMonth;
import java.util.List;

/** Opening balances, the month's costs, and the first two months closed. */
@Dependent
class Bookkeeping {
    private static final AccountCode BANK = new AccountCode("1000");
    private static final AccountCode PAYABLES = new AccountCode("2000");
    private static final AccountCode GOODS_NOT_INVOICED = new AccountCode("2050");
    private static final AccountCode VEHICLES_AND_EQUIPMENT = new AccountCode("1500");
    private static final AccountCode EQUITY = new AccountCode("3000");
    private static final AccountCode WAGES = new AccountCode("6000");
    private static final AccountCode VEHICLE_COSTS = new AccountCode("6100");
    private static final AccountCode RENT_AND_OFFICE = new AccountCode("6200");
    private static final int CLOSED_MONTHS = 2;

    private final PostJournal postJournal;
    private final ClosePeriod closePeriod;

    @Inject
    Bookkeeping(PostJournal postJournal, ClosePeriod closePeriod) {
        this.postJournal = postJournal;
        this.closePeriod = closePeriod;
    }

    void note(Scene scene) {
        scene.agenda().note(scene.from(), LocalTime.of(9, 0), () -> open(scene));
        LocalDate end = scene.agenda().today();
        for (LocalDate month = scene.from(); !month.isAfter(end); month = month.plusMonths(1)) {
            note(scene, month);
        }
        for (int i = 0; i < CLOSED_MONTHS; i++) {
            YearMonth month = YearMonth.from(scene.from()).plusMonths(i);
            scene.agenda()
                    .note(
                            month.plusMonths(1).atDay(10),
                            LocalTime.of(17, 45),
                            () -> closePeriod.close(new ClosePeriod.Close(
                                    DocumentId.next(), month, scene.staff().owner())));
        }
    }

    private void note(Scene scene, LocalDate month) {
        Agenda agenda = scene.agenda();
        LocalDate last = agenda.workdayBefore(month.plusMonths(1), 1);
        agenda.note(
                agenda.workdayAfter(month.minusDays(1), 1),
                LocalTime.of(9, 30),
                () -> cost(scene, "Rent and insurance of " + YearMonth.from(month), RENT_AND_OFFICE, "1840.00"));
        agenda.note(
                agenda.workdayAfter(month.minusDays(1), 1),
                LocalTime.of(9, 40),
                () -> cost(
                        scene, "Insurance and service of the vans, " + YearMonth.from(month), VEHICLE_COSTS, "690.00"));
        month.datesUntil(month.plusMonths(1))
                .filter(day -> day.getDayOfWeek() == DayOfWeek.FRIDAY)
                .forEach(friday -> agenda.note(
                        friday, LocalTime.of(16, 0), () -> cost(scene, "Wages, week to " + friday, WAGES, "1175.00")));
        agenda.note(
                last,
                LocalTime.of(16, 10),
                () -> cost(scene, "Office and telephone of " + YearMonth.from(month), RENT_AND_OFFICE, "415.00"));
        for (int week = 6; week < 28; week += 7) {
            LocalDate day = month.plusDays(week);
            agenda.note(
                    day,
                    LocalTime.of(17, 10),
                    () -> cost(
                            scene,
                            "Fuel, week of " + day,
                            VEHICLE_COSTS,
                            scene.dice().between(118, 176) + ".40"));
        }
        agenda.note(month.plusDays(24), LocalTime.of(11, 0), () -> supplierBill(scene));
    }

    private void open(Scene scene) {
        postJournal.post(new PostJournal.Journal(
                DocumentId.next(),
                PostJournal.Type.JOURNAL,
                scene.day(),
                "Opening balances",
                List.of(
                        PostJournal.Line.debit(BANK, Dollars.whole(38_250)),
                        PostJournal.Line.debit(VEHICLES_AND_EQUIPMENT, Dollars.whole(46_500)),
                        PostJournal.Line.credit(EQUITY, Dollars.whole(84_750))),
                scene.staff().owner()));
    }

    private DocumentId cost(Scene scene, String what, AccountCode account, String amount) {
        return post(scene, what, account, BANK, Dollars.of(amount));
    }

    private DocumentId post(Scene scene, String what, AccountCode debit, AccountCode credit, Money amount) {
        DocumentId id = DocumentId.next();
        postJournal.post(new PostJournal.Journal(
                id,
                PostJournal.Type.EXPENSE,
                scene.day(),
                what,
                List.of(PostJournal.Line.debit(debit, amount), PostJournal.Line.credit(credit, amount)),
                scene.staff().biller()));
        return id;
    }

    /** The supplier bills what came in, and is paid two weeks later. */
    private void supplierBill(Scene scene) {
        Money bill = scene.depots().deliveries().bill();
        if (bill.isPositive()) {
            post(scene, "Bill of Tansyford Trade Supply", GOODS_NOT_INVOICED, PAYABLES, bill);
            scene.agenda().noteAfter(10, 15, () -> post(scene, "Tansyford Trade Supply paid", PAYABLES, BANK, bill));
        }
    }

    /** Entered on the wrong account, taken back and entered again. */
    void postWrongly(Scene scene) {
        DocumentId wrong = cost(scene, "Tires for van 2", RENT_AND_OFFICE, "386.20");
        postJournal.reverse(new ReverseDocument.Reversal(
                DocumentId.next(),
                wrong,
                scene.day(),
                "Belongs to the vehicles",
                scene.staff().biller()));
        cost(scene, "Tires for van 2", VEHICLE_COSTS, "386.20");
    }
}
