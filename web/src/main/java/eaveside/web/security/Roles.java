package eaveside.web.security;

import eaveside.access.Role;

/** The names of the {@link Role roles}, for annotations: they take nothing but texts. */
public final class Roles {
    public static final String OWNER = "OWNER";
    public static final String OFFICE = "OFFICE";
    public static final String TECHNICIAN = "TECHNICIAN";

    private Roles() {}
}
