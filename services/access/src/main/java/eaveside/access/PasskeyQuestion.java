package eaveside.access;

/**
 * What a browser is asked about passkeys.
 *
 * @param  name    by which the answer says what it answers, once and within five minutes
 * @param  options for {@code navigator.credentials}, as JSON
 */
public record PasskeyQuestion(String name, String options) {}
