/**
 * What a request passes before anything here looks at it: its form, its size and its pace, and how much of the server one
 * caller may hold at a time. Everything here works on what came over the network and knows no use case.
 */
@NullMarked
package eaveside.web.entrance;

import org.jspecify.annotations.NullMarked;
