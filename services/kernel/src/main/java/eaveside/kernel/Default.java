package eaveside.kernel;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Says on a record's component that it may be left out, and what it is then. A component without it, and without
 * {@code @Nullable}, must be there.
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface Default {
    /**
     * The value as a text; empty for an empty text, list or map. Of any other type the constructor then gets null, and puts
     * in its place what the record is without it.
     */
    String value() default "";
}
