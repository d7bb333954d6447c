package eaveside.kernel;

import jakarta.enterprise.inject.Stereotype;
import jakarta.inject.Singleton;
import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * A use case or a part of one, of which a single instance serves all requests, several at a time: it holds its parts, set
 * once, and nothing of a request. Made anew for each request, these parts of parts took two fifths of a page's time.
 */
@Stereotype
@Singleton
@Documented
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
public @interface Shared {}
