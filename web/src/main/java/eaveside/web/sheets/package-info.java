/** The technician's phone: today's own sheets, the sheet itself, its photos, and the worker that lets it reload without signal. */
@NullMarked
package eaveside.web.sheets;

import org.jspecify.annotations.NullMarked;
