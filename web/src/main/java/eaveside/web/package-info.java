/** The web application: pages, JSON API and what stands between them and the network. */
@NullMarked
package eaveside.web;

import org.jspecify.annotations.NullMarked;
