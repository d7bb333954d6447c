package eaveside.pricing;

import eaveside.kernel.Decision;
import eaveside.kernel.KernelRefusal;

/** The keys that lists page by: numbers. */
@Decision
final class Keys {
    private Keys() {}

    /** Refuses a key that is not one of a list here. */
    static long number(String key) {
        try {
            return Long.parseLong(key);
        } catch (NumberFormatException e) {
            throw new KernelRefusal.BadPageKey();
        }
    }
}
