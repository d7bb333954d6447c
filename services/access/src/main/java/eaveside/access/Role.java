package eaveside.access;

/** What a person is in the company; the web layer decides by it what each may ask for. */
public enum Role {
    /** Everything. */
    OWNER,
    /** Everything but the administration of users, what work costs, and the books unless the owner opens them. */
    OFFICE,
    /** Own visits' sheets and the consumables of the own van: no prices, no costs, no other customers. */
    TECHNICIAN
}
