/** Who may do what, and what every answer carries to keep the browser safe. */
@NullMarked
package eaveside.web.security;

import org.jspecify.annotations.NullMarked;
