package eaveside.kernel;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Marks a class that decides by plain values alone: no container, no database, no clock of its own. The architecture
 * test holds it to that, so that every rule of the trade can be tested without starting anything.
 */
@Documented
@Retention(RetentionPolicy.CLASS)
@Target(ElementType.TYPE)
public @interface Decision {}
