/** Tables of drafts, invoices and payments, and what is decided on them; closed to other modules. */
@NullMarked
package eaveside.invoicing.internal;

import org.jspecify.annotations.NullMarked;
