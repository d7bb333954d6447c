package eaveside.customers;

import eaveside.kernel.CustomerId;
import java.util.Set;

/**
 * A customer that another may be the same as.
 *
 * @param  because what the two have in common; never empty
 */
public record Duplicate(CustomerId id, String name, Set<Because> because) {
    /** What two customers have in common. */
    public enum Because {
        /** The last ten digits of the phone numbers, however they are written. */
        PHONE,
        /** The email addresses, capitals aside. */
        EMAIL,
        /** Name, street and city; capitals, accents and punctuation aside. */
        NAME_AND_ADDRESS
    }

    public Duplicate {
        because = Set.copyOf(because);
    }
}
