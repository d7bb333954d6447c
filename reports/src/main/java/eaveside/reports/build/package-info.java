/** Runs while the project is built, never afterwards. */
@NullMarked
package eaveside.reports.build;

import org.jspecify.annotations.NullMarked;
