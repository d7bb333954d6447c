package eaveside.access;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A passkey as a list shows it.
 *
 * @param  label by which its user knows it
 * @param  used  when it signed in last; null for never
 */
public record Passkey(
        PasskeyId id, String label, Instant added, @Nullable Instant used) {}
