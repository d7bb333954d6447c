/** What the owner decides once and seldom changes: people, cost rates, taxes; and who did what. */
@NullMarked
package eaveside.web.settings;

import org.jspecify.annotations.NullMarked;
