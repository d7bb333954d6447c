package eaveside.web.security;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.access.Role;
import java.lang.reflect.Field;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class RolesTest {
    @Test
    void every_role_has_its_name_here_and_nothing_else_has() throws IllegalAccessException {
        Set<String> names = new TreeSet<>();
        for (Field field : Roles.class.getFields()) {
            assertEquals(field.getName(), field.get(null));
            names.add(field.getName());
        }
        assertEquals(Stream.of(Role.values()).map(Role::name).collect(Collectors.toCollection(TreeSet::new)), names);
    }
}
