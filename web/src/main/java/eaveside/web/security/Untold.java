package eaveside.web.security;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** A request that the audit log is not told of here; see {@link AuditLogKeeper}. */
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.TYPE, ElementType.METHOD})
public @interface Untold {
    /** Why: it changes nothing, or its use case tells the audit log by itself. */
    String value();
}
