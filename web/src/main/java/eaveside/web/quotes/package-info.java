/** Quotes on screen and for scripts: written with prices that follow what is entered, sent, accepted or declined. */
@NullMarked
package eaveside.web.quotes;

import org.jspecify.annotations.NullMarked;
