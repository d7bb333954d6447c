package eaveside.web.worklist;

import eaveside.web.View;
import java.util.List;

/** One kind of what waits: how much of it there is, and what of it has waited longest. */
interface Kind {
    Waiting.Type type();

    /** How much of it there is, whatever is shown. */
    long count(View view);

    /** At most so many, what has waited longest first. */
    List<Waiting> longest(View view, int most);
}
