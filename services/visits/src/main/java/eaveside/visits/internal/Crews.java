package eaveside.visits.internal;

import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.access.User;
import eaveside.inventory.Location;
import eaveside.inventory.ReadStock;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.visits.JobSheet;
import eaveside.visits.VisitRefusal;
import jakarta.inject.Inject;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Who may be in a crew, and what its technicians may see, sign and draw from; the office and the owner may for all. */
@Shared
public class Crews {
    private final ReadUsers readUsers;
    private final ReadStock readStock;

    @Inject
    public Crews(ReadUsers readUsers, ReadStock readStock) {
        this.readUsers = readUsers;
        this.readStock = readStock;
    }

    /** Refuses whoever is not an active user. */
    public void requireOnStaff(List<UserId> crew) {
        for (UserId member : crew) {
            User user = readUsers.user(member);
            if (!user.active()) {
                throw new KernelRefusal.NotActive("user", user.name(), "crew");
            }
        }
    }

    /** Refuses a technician who is not in the visit's crew. */
    public void requireOwn(UserId who, VisitRow visit) {
        if (isTechnician(who) && !visit.hasInCrew(who)) {
            throw new VisitRefusal.NotYours();
        }
    }

    /**
     * Where the sheet's consumables came from: the named location, else the signer's van. Refuses a technician any place but
     * a van of the crew.
     *
     * @return null where nothing was used and no location is named
     */
    public @Nullable LocationId locationOf(JobSheet sheet, VisitRow visit) {
        LocationId named = sheet.location();
        if (named != null) {
            Location location = readStock.location(named);
            if (isTechnician(sheet.by()) && location.technicians().stream().noneMatch(visit::hasInCrew)) {
                throw new VisitRefusal.NotYourVan(location.name());
            }
            return named;
        }
        if (!sheet.touchesStock()) {
            return null;
        }
        return readStock.vanOf(sheet.by()).map(Location::id).orElseThrow(VisitRefusal.NoLocation::new);
    }

    private boolean isTechnician(UserId who) {
        return readUsers.user(who).role() == Role.TECHNICIAN;
    }
}
