package eaveside.invoicing;

import eaveside.kernel.FindingId;
import eaveside.kernel.VisitLineId;
import org.jspecify.annotations.Nullable;

/**
 * Where a line that bills a visit came from; edits of the line do not touch it.
 *
 * @param finding  that the quote of the work came from
 * @param goodwill the work was given: the line shows its value and takes all of it off again
 */
public record LineOrigin(VisitLineId visitLine, @Nullable FindingId finding, boolean goodwill) {}
