/** What each service line earned, for the owner: as a page with a picture, on paper and as a spreadsheet. */
@NullMarked
package eaveside.web.margins;

import org.jspecify.annotations.NullMarked;
