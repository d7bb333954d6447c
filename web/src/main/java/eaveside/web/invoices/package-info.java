/**
 * Invoices on screen and for scripts: the list, drafts as they are written, issued invoices with their paper, payments,
 * and what customers owe or have to the good.
 */
@NullMarked
package eaveside.web.invoices;

import org.jspecify.annotations.NullMarked;
