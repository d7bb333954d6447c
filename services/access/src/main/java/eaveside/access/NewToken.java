package eaveside.access;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.UserId;
import org.jspecify.annotations.Nullable;

/**
 * A token to be made.
 *
 * @param  user  whom it acts as, with that user's role at the time of use
 * @param  label what it is for, to know it by in a list
 * @param  scope what it is good for, within what the user may
 * @param  days  of validity, 1 to {@link #LONGEST_DAYS}
 * @param  by    null from the command line
 */
public record NewToken(
        TokenId id,
        UserId user,
        String label,
        @Default("READ") TokenScope scope,
        int days,
        @Nullable UserId by) {
    /** The longest that a token is valid, in days. */
    public static final int LONGEST_DAYS = 366;

    public NewToken {
        Check check = new Check();
        label = check.required("label", label, 100);
        check.between("days", days, 1, LONGEST_DAYS);
        check.done();
    }
}
