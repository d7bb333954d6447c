package eaveside.web.security;

import eaveside.web.Page;

/**
 * A "no", or a fault, for people.
 *
 * @param  key    of the text to show with the detail, or empty where the detail is the text
 * @param  detail the refusal's own words, or a fault's correlation id
 */
public record RefusalPage(int status, String key, String detail) implements Page {}
