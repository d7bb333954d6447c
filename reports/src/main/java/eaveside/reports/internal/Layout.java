package eaveside.reports.internal;

import eaveside.reports.Letterhead;

/**
 * A paper ready for its template.
 *
 * @param  template the name of the template, without its size
 */
public record Layout(String template, Letterhead from, Words words, Head head, Rows rows) {}
