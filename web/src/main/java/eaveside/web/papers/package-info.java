/** What every printed paper of the company shares. */
@NullMarked
package eaveside.web.papers;

import org.jspecify.annotations.NullMarked;
