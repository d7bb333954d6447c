/** Price books on screen: as lists to read, as drafts to write, side by side, and put into force. */
@NullMarked
package eaveside.web.prices;

import org.jspecify.annotations.NullMarked;
