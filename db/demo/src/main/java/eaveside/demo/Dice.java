package eaveside.demo;

import java.util.List;
import java.util.SplittableRandom;

/** Chance that falls alike for one seed, on every machine. */
final class Dice {
    private static final int HUNDRED = 100;

    private final SplittableRandom random;

    Dice(long seed) {
        this(new SplittableRandom(seed));
    }

    private Dice(SplittableRandom random) {
        this.random = random;
    }

    /** Dice of their own, so that one part's throws do not change another's. */
    Dice split() {
        return new Dice(random.split());
    }

    /** From the lowest to the highest, both included. */
    int between(int lowest, int highest) {
        return random.nextInt(lowest, highest + 1);
    }

    boolean percent(int chance) {
        return random.nextInt(HUNDRED) < chance;
    }

    <T> T oneOf(List<T> things) {
        return things.get(random.nextInt(things.size()));
    }
}
