package eaveside.web.security;

import eaveside.access.Duty;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Open to somebody signed in who owes one of these first: it is where they do it. Everything else is closed to them. */
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.TYPE, ElementType.METHOD})
public @interface BeforeDuties {
    Duty[] value();
}
