package eaveside.access;

import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Who was let in, by a session or a token.
 *
 * @param  user   as they are now
 * @param  sights  what they see now of what not everybody may
 * @param  session null for a token
 */
public record Admitted(
        User user, Set<Sight> sights, @Nullable SessionId session) {
    public Admitted {
        sights = Set.copyOf(sights);
    }
}
