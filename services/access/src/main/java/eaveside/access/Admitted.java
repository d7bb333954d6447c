package eaveside.access;

import java.util.Set;

/**
 * Who was let in, by a session or a token.
 *
 * @param  user   as they are now
 * @param  sights what they see now of what not everybody may
 */
public record Admitted(User user, Set<Sight> sights) {
    public Admitted {
        sights = Set.copyOf(sights);
    }
}
