package eaveside.inventory.internal;

import eaveside.inventory.Place;
import eaveside.inventory.PlaceKind;
import eaveside.kernel.PlaceId;
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
@Table(name = "place")
public class PlaceRow {
    @Id
    UUID id;

    String name;

    @Enumerated(EnumType.STRING)
    PlaceKind kind;

    boolean active;

    @ElementCollection
    @CollectionTable(name = "place_technician", joinColumns = @JoinColumn(name = "place_id"))
    @Column(name = "user_id")
    Set<UUID> technicians = new HashSet<>();

    @Version
    int version;

    PlaceRow() {}

    public PlaceRow(Place place) {
        this.id = place.id().value();
        take(place);
    }

    public void change(Place place) {
        take(place);
    }

    /** Takes its technicians off it; tells whether it had any. */
    public boolean leave() {
        boolean had = !technicians.isEmpty();
        technicians.clear();
        return had;
    }

    private void take(Place place) {
        this.name = place.name();
        this.kind = place.kind();
        this.active = place.active();
        Set<UUID> wanted = technicians(place);
        technicians.retainAll(wanted);
        technicians.addAll(wanted);
    }

    /** Whether nothing but the version would change. */
    public boolean says(Place place) {
        return name.equals(place.name())
                && kind == place.kind()
                && active == place.active()
                && Set.copyOf(technicians).equals(technicians(place));
    }

    public int version() {
        return version;
    }

    public Place toPlace() {
        return new Place(
                new PlaceId(id),
                name,
                kind,
                technicians.stream().sorted().map(UserId::new).toList(),
                active,
                version);
    }

    private static Set<UUID> technicians(Place place) {
        return place.technicians().stream().map(UserId::value).collect(Collectors.toSet());
    }
}
