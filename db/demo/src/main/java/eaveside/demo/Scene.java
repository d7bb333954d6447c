package eaveside.demo;

import eaveside.kernel.LocationId;
import eaveside.kernel.UserId;
import java.time.LocalDate;
import java.util.List;

/**
 * What the parts of the history share.
 *
 * @param  from first day of the books
 */
record Scene(LocalDate from, Staff staff, Depots depots, Range range, List<DemoSite> sites, Agenda agenda, Dice dice) {
    Scene {
        sites = List.copyOf(sites);
    }

    /** Whether the event that runs lies in the last few working days: what the office still has on its desk. */
    boolean isLately() {
        return day().isAfter(agenda.workdayBefore(agenda.today(), 6));
    }

    LocalDate day() {
        return agenda.day();
    }

    /** The van that the crew's lead drives. */
    LocationId vanOf(UserId lead) {
        return depots.vans().get(staff.crews().getFirst().contains(lead) ? 0 : 1);
    }
}
