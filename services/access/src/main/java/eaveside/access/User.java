package eaveside.access;

import eaveside.kernel.Default;
import eaveside.kernel.Records;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.kernel.Versioned;

/**
 * A person who signs in.
 *
 * @param  username lower-case, unique, never changes
 * @param  name     as it is shown to others
 * @param  active   false once deactivated: signs in no more, yet stays named on what they did
 */
public record User(
        UserId id,
        String username,
        String name,
        Role role,
        @Default("true") boolean active,
        @Default("0") int version) implements Versioned {
    public User {
        name = Texts.required("name", name, 100);
    }

    User with(Role other, boolean nowActive) {
        return new User(id, username, name, other, nowActive, version);
    }

    @Override
    public User withVersion(int other) {
        return Records.with(this, "version", other);
    }
}
