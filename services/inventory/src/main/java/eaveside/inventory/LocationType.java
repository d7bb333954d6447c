package eaveside.inventory;

/** What a location is. */
public enum LocationType {
    STORE,
    VAN
}
