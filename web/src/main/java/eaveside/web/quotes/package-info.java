/** Quotes on screen and for scripts: written with prices that work themselves out, offered, agreed or declined. */
@NullMarked
package eaveside.web.quotes;

import org.jspecify.annotations.NullMarked;
