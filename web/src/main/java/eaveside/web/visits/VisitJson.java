package eaveside.web.visits;

import eaveside.visits.ScopeChange;
import eaveside.visits.Visit;
import eaveside.visits.VisitChange;
import eaveside.web.Json.Measured;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** How visits look to scripts. Ids are UUIDs, days ISO 8601, names of closed lists as in the program. */
public final class VisitJson {
    private VisitJson() {}

    static @Nullable String text(@Nullable Object value) {
        return value == null ? null : value.toString();
    }

    /** A visit in a list. */
    public record Summary(
            String id,
            String customer,
            String site,
            String date,
            @Nullable String completedOn,
            List<String> crew,
            String status) {
        static Summary of(Visit.Summary v) {
            return new Summary(
                    v.id().toString(),
                    v.customer().toString(),
                    v.site().toString(),
                    v.date().toString(),
                    text(v.completedOn()),
                    v.crew().stream().map(Object::toString).toList(),
                    v.status().name());
        }
    }

    /** Planned work. */
    public record Line(
            String id, String serviceItem, @Nullable String surface, Measured planned) {}

    /** Why it was moved or canceled. */
    public record Change(String type, String from, String to, String reason, String at) {
        static Change of(VisitChange c) {
            return new Change(c.type().name(), c.from().toString(), c.to().toString(), c.reason(), c.at().toString());
        }
    }

    /** What the sheet did not do of the plan, or did beyond it. */
    public record Differing(
            String id,
            String type,
            String line,
            Measured quantity,
            @Nullable String reason,
            String decision,
            String note,
            int version) {
        static Differing of(ScopeChange d) {
            return new Differing(
                    d.id().toString(),
                    d.type().name(),
                    d.line().toString(),
                    Measured.of(d.quantity()),
                    text(d.reason()),
                    d.decision().name(),
                    d.note(),
                    d.version());
        }
    }

    /** A visit whole; {@code version} is to be named by whoever changes it. */
    public record Shown(
            String id,
            String customer,
            String site,
            @Nullable String quote,
            @Nullable String returnsTo,
            String date,
            List<String> crew,
            String status,
            String note,
            @Nullable String sheet,
            @Nullable String completedOn,
            @Nullable String closing,
            @Nullable String invoice,
            int version,
            List<Line> lines,
            List<Change> changes,
            List<Differing> scopeChanges) {
        static Shown of(Visit v, List<ScopeChange> scopeChanges) {
            return new Shown(
                    v.id().toString(),
                    v.customer().toString(),
                    v.site().toString(),
                    text(v.quote()),
                    text(v.returnsTo()),
                    v.date().toString(),
                    v.crew().stream().map(Object::toString).toList(),
                    v.status().name(),
                    v.note(),
                    text(v.sheet()),
                    text(v.completedOn()),
                    text(v.closing()),
                    text(v.invoice()),
                    v.version(),
                    v.lines().stream()
                            .map(l -> new Line(
                                    l.id().toString(),
                                    l.serviceItem().toString(),
                                    text(l.surface()),
                                    Measured.of(l.planned())))
                            .toList(),
                    v.changes().stream().map(Change::of).toList(),
                    scopeChanges.stream().map(Differing::of).toList());
        }
    }
}
