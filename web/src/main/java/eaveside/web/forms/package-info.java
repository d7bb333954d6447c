/** Reading forms: every error of a form is collected, and nothing typed is lost. */
@NullMarked
package eaveside.web.forms;

import org.jspecify.annotations.NullMarked;
