package eaveside.demo;

import eaveside.access.Role;

/** How one of the demo company's people signs in; the password was made up for this data folder. */
public record DemoUser(Role role, String name, String username, String password) {
    /** Without the password. */
    @Override
    public String toString() {
        return username + " (" + role + ")";
    }
}
