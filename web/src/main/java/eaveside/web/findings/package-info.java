/** What was seen on site, until each finding is answered and closed. */
@NullMarked
package eaveside.web.findings;

import org.jspecify.annotations.NullMarked;
