package eaveside.demo;

import java.util.List;

/** What comes in the way of a visit, or on top of it. */
enum Incident {
    NONE,
    /** Two panels are cracked and left alone. */
    CRACKED_PANELS,
    /** Skylights that nobody saw from the ground; the customer wants them done. */
    MORE_SKYLIGHTS,
    /** A few panes beyond the plan. */
    MORE_PANES,
    /** Rain stops the work half way. */
    RAIN,
    /** Part of it cannot be reached. */
    NO_ACCESS,
    /** The customer wants part of it left out. */
    LEFT_OUT,
    /** Nobody opens the gate. */
    SHUT,
    /** Something is seen that the customer should know of. */
    SIGHTING,
    /** More in the van than in the books. */
    MISCOUNTED_VAN;

    private static final List<Incident> LATELY =
            List.of(MORE_SKYLIGHTS, CRACKED_PANELS, RAIN, SIGHTING, MORE_PANES, NO_ACCESS, NONE);

    /** One after the other, so that the office's list shows some of each. */
    static Incident lately(int count) {
        return LATELY.get(count % LATELY.size());
    }

    /** Most visits go as planned. */
    static Incident usually(Dice dice) {
        int chance = dice.between(1, 100);
        if (chance <= 9) {
            return CRACKED_PANELS;
        }
        if (chance <= 24) {
            return SIGHTING;
        }
        if (chance <= 31) {
            return MORE_SKYLIGHTS;
        }
        if (chance <= 37) {
            return MORE_PANES;
        }
        if (chance <= 42) {
            return RAIN;
        }
        if (chance <= 46) {
            return NO_ACCESS;
        }
        return chance <= 49 ? LEFT_OUT : NONE;
    }
}
