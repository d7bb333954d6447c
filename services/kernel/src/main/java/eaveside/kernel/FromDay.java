package eaveside.kernel;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Optional;

/**
 * When a setting may begin that holds from a day on until the next one of its sort does, such as a tax or the rates of cost:
 * what was in force on a day that has been billed or costed never changes.
 */
@Decision
public final class FromDay {
    private FromDay() {}

    /**
     * The first setting may begin on any day, and one may be added before the first; any other begins today or later, and can
     * be set again until its day has come.
     *
     * @param  set  the days from which there are settings; a day that was set again may stand there as often
     * @param  from the day asked for
     * @return the earliest day that is possible, where that day is not
     */
    public static Optional<LocalDate> earliestInsteadOf(LocalDate from, Collection<LocalDate> set, LocalDate today) {
        if (set.stream().allMatch(from::isBefore)) {
            return Optional.empty();
        }
        LocalDate earliest = today.plusDays(set.contains(from) ? 1 : 0);
        return from.isBefore(earliest) ? Optional.of(earliest) : Optional.empty();
    }
}
