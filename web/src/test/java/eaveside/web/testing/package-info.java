/** The running application for the tests that speak HTTP or drive a browser. */
@NullMarked
package eaveside.web.testing;

import org.jspecify.annotations.NullMarked;
