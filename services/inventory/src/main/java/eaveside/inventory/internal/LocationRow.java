package eaveside.inventory.internal;

import eaveside.inventory.Location;
import eaveside.inventory.LocationType;
import eaveside.kernel.EditedRow;
import eaveside.kernel.LocationId;
import eaveside.kernel.UserId;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** A store room or van; its row is the lock of every movement of its goods. */
@Entity
@Table(name = "location")
public class LocationRow extends EditedRow<Location> {
    @Column(name = "id", insertable = false, updatable = false)
    LocationId location;

    String name;

    @Enumerated(EnumType.STRING)
    LocationType type;

    boolean active;

    @ElementCollection
    @CollectionTable(name = "location_technician", joinColumns = @JoinColumn(name = "location_id"))
    @Column(name = "user_id")
    Set<UUID> technicians = new HashSet<>();

    /** Takes its technicians off it; tells whether it had any. */
    public boolean leave() {
        boolean had = !technicians.isEmpty();
        technicians.clear();
        return had;
    }

    @Override
    protected void store(Location content) {
        location = content.id();
        name = content.name();
        type = content.type();
        active = content.active();
        Set<UUID> wanted = content.technicians().stream().map(UserId::value).collect(Collectors.toSet());
        technicians.retainAll(wanted);
        technicians.addAll(wanted);
    }

    @Override
    protected Location stored() {
        return new Location(
                location, name, type, technicians.stream().map(UserId::new).toList(), active, 0);
    }
}
