package eaveside.web.security;

import eaveside.access.Sight;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Beside {@link jakarta.annotation.security.RolesAllowed}: only for who sees this too; a method's own annotation outranks its class's. */
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.TYPE, ElementType.METHOD})
public @interface Sees {
    Sight value();
}
