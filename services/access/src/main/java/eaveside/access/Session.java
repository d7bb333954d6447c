package eaveside.access;

import eaveside.kernel.UserId;
import java.time.Instant;

/**
 * A browser that is signed in, as a list shows it.
 *
 * @param  seen    when it asked for something last, to the minute
 * @param  address the network address that it began from
 * @param  agent   as the browser calls itself
 */
public record Session(SessionId id, UserId user, Instant began, Instant seen, String address, String agent) {}
