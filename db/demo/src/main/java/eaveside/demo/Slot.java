package eaveside.demo;

import eaveside.kernel.UserId;
import java.time.LocalDate;
import java.util.List;

/** A crew's time on a day, and where it goes. */
record Slot(LocalDate day, List<UserId> crew, DemoSite site) {
    Slot {
        crew = List.copyOf(crew);
    }

    Slot on(LocalDate other) {
        return new Slot(other, crew, site);
    }
}
