package eaveside.web.security;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Decides who comes in: closed to scripts whose token was not issued for that ({@link eaveside.access.TokenScope#ADMINISTER}). */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
public @interface Administers {}
