package eaveside.inventory.internal;

import eaveside.inventory.Location;
import eaveside.inventory.LocationType;
import eaveside.kernel.LocationId;
import eaveside.kernel.UserId;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** A store room or van; its row is the lock of every movement of its goods. */
@Entity
@Table(name = "location")
public class LocationRow {
    @Id
    UUID id;

    String name;

    @Enumerated(EnumType.STRING)
    LocationType type;

    boolean active;

    @ElementCollection
    @CollectionTable(name = "location_technician", joinColumns = @JoinColumn(name = "location_id"))
    @Column(name = "user_id")
    Set<UUID> technicians = new HashSet<>();

    @Version
    int version;

    LocationRow() {}

    public LocationRow(Location location) {
        this.id = location.id().value();
        take(location);
    }

    public void change(Location location) {
        take(location);
    }

    /** Takes its technicians off it; tells whether it had any. */
    public boolean leave() {
        boolean had = !technicians.isEmpty();
        technicians.clear();
        return had;
    }

    private void take(Location location) {
        this.name = location.name();
        this.type = location.type();
        this.active = location.active();
        Set<UUID> wanted = technicians(location);
        technicians.retainAll(wanted);
        technicians.addAll(wanted);
    }

    /** Whether nothing but the version would change. */
    public boolean says(Location location) {
        return name.equals(location.name())
                && type == location.type()
                && active == location.active()
                && Set.copyOf(technicians).equals(technicians(location));
    }

    public int version() {
        return version;
    }

    public Location toLocation() {
        return new Location(
                new LocationId(id),
                name,
                type,
                technicians.stream().sorted().map(UserId::new).toList(),
                active,
                version);
    }

    private static Set<UUID> technicians(Location location) {
        return location.technicians().stream().map(UserId::value).collect(Collectors.toSet());
    }
}
