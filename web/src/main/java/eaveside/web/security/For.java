package eaveside.web.security;

import eaveside.access.Role;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** The roles that may call a resource; a method's own annotation outranks its class's. Without one, nobody may. */
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.TYPE, ElementType.METHOD})
public @interface For {
    Role[] value();
}
