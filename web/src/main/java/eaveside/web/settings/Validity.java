package eaveside.web.settings;

import java.time.LocalDate;
import java.util.List;

/** Whether something that is set from a day on is in force today. */
enum Validity {
    UPCOMING,
    CURRENT,
    PAST;

    /**
     * Of the settings that replace one another.
     *
     * @param  from  their first days
     * @param  asked the first day of the one asked for
     */
    static Validity of(List<LocalDate> from, LocalDate asked, LocalDate today) {
        if (asked.isAfter(today)) {
            return UPCOMING;
        }
        return from.stream().anyMatch(day -> day.isAfter(asked) && !day.isAfter(today)) ? PAST : CURRENT;
    }
}
