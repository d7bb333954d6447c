package eaveside.visits;

import eaveside.kernel.UserId;
import eaveside.kernel.Versioned;
import eaveside.kernel.VisitId;
import java.time.LocalDate;
import java.util.List;

/** What is stored of a visit that others may change: told to whoever wanted to change an earlier version. */
public record VisitState(VisitId visit, int version, VisitStatus status, LocalDate date, List<UserId> crew)
        implements Versioned {
    public VisitState {
        crew = List.copyOf(crew);
    }

    @Override
    public String what() {
        return "visit";
    }
}
