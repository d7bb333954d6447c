/** Pictures of figures, drawn on the server as SVG: records of places and lengths that templates only draw. */
@NullMarked
package eaveside.web.charts;

import org.jspecify.annotations.NullMarked;
