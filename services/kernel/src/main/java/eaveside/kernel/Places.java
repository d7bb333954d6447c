package eaveside.kernel;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** How many of each name are at something at the same time, so that none of them takes the room of the others. */
public final class Places {
    private final Map<String, Integer> taken = new ConcurrentHashMap<>();

    /**
     * Takes a place, to be given back; takes none where the name has as many as it may.
     *
     * @param  most of that name at once
     */
    public boolean enters(String name, int most) {
        if (taken.merge(name, 1, Integer::sum) <= most) {
            return true;
        }
        leaves(name);
        return false;
    }

    /** Gives back a place that was taken. */
    public void leaves(String name) {
        taken.computeIfPresent(name, (same, places) -> places == 1 ? null : places - 1);
    }
}
