package eaveside.access;

import eaveside.kernel.UserId;

/**
 * A person who signs in.
 *
 * @param  username  lower-case, unique, never changes
 * @param  name   as it is shown to others
 * @param  active false once deactivated: signs in no more, yet stays named on what they did
 */
public record User(UserId id, String username, String name, Role role, boolean active) {}
