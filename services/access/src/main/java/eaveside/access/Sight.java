package eaveside.access;

import java.util.EnumSet;
import java.util.Set;

/**
 * What not everybody may see. This is the only place that says who does: pages, papers, files and the interface for
 * scripts all ask it.
 */
public enum Sight {
    /** What work costs the company: cost rates and wages, expected cost, the cost of visits, margins. */
    COSTS,
    /** The books: accounts with their balances, entries, journals. Wages are among them. */
    BOOKS;

    /**
     * What a role sees.
     *
     * @param  officeReadsBooks whether the owner has opened the books to the office
     */
    public static Set<Sight> of(Role role, boolean officeReadsBooks) {
        return switch (role) {
            case OWNER -> EnumSet.allOf(Sight.class);
            case OFFICE -> officeReadsBooks ? EnumSet.of(BOOKS) : EnumSet.noneOf(Sight.class);
            case TECHNICIAN -> EnumSet.noneOf(Sight.class);
        };
    }
}
