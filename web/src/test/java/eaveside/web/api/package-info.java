/** What the interface for scripts answers, held fast word by word, so that no rebuilding changes it unnoticed. */
@NullMarked
package eaveside.web.api;

import org.jspecify.annotations.NullMarked;
