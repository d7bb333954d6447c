package eaveside.demo;

import eaveside.kernel.OfferingId;
import eaveside.kernel.ServiceLineId;
import java.util.Map;
import java.util.Objects;

/** The ids of what the company sells. */
record Range(Map<Line, ServiceLineId> lines, Map<Work, OfferingId> offerings) {
    Range {
        lines = Map.copyOf(lines);
        offerings = Map.copyOf(offerings);
    }

    ServiceLineId id(Line line) {
        return Objects.requireNonNull(lines.get(line));
    }

    OfferingId id(Work work) {
        return Objects.requireNonNull(offerings.get(work));
    }

    Work work(OfferingId offering) {
        return offerings.entrySet().stream()
                .filter(e -> e.getValue().equals(offering))
                .findFirst()
                .orElseThrow()
                .getKey();
    }
}
