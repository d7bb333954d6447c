package eaveside.inventory;

/** Where consumables live. */
public enum PlaceKind {
    STORE,
    VAN
}
