/** The books on screen: trial balance, the entries behind every figure, documents, journals and the close of a month. */
@NullMarked
package eaveside.web.books;

import org.jspecify.annotations.NullMarked;
