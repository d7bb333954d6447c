package eaveside.customers;

import eaveside.kernel.Quantity;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A change of a surface's extent.
 *
 * @param  from  null where the surface was new
 * @param  visit null where the office changed it
 */
public record SurfaceCount(
        SurfaceId surface,
        @Nullable Quantity from,
        Quantity to,
        @Nullable VisitId visit,
        UserId by,
        Instant at) {}
