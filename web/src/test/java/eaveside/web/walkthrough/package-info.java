/** The main job from the quote to the margin, walked through by three people in a real browser. */
@NullMarked
package eaveside.web.walkthrough;

import org.jspecify.annotations.NullMarked;
