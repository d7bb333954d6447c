/** What the company sets for itself: its name, its range, taxes, rates, panel manufacturers, and who may come in. */
@NullMarked
package eaveside.web.settings;

import org.jspecify.annotations.NullMarked;
