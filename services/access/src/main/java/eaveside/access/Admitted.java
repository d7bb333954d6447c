package eaveside.access;

import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Who was let in, by a session or a token.
 *
 * @param  user   as they are now
 * @param  sights  what they see now of what not everybody may
 * @param  session null for a token
 * @param  duty    what a person owes before anything else; null for nothing. A script owes nothing
 * @param  scope   of a script's token; null for a session
 * @param  comfortable whether they want more room on pages than compact ones have
 */
public record Admitted(
        User user,
        Set<Sight> sights,
        @Nullable SessionId session,
        @Nullable Duty duty,
        @Nullable TokenScope scope,
        boolean comfortable) {
    public Admitted {
        sights = Set.copyOf(sights);
    }
}
