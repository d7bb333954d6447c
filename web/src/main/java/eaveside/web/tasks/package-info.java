/**
 * What the command line asks of the application. The launcher leaves a task in a file that only the machine's owner can
 * read, starts the server, and reads the answer from a file beside it; so founding a company, a token or a lost password
 * go through the same use cases as everything else.
 */
@NullMarked
package eaveside.web.tasks;

import org.jspecify.annotations.NullMarked;
