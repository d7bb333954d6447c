package eaveside.inventory;

/** Where consumables live. */
public enum LocationType {
    STORE,
    VAN
}
