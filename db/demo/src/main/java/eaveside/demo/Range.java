package eaveside.demo;

import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import java.util.Map;
import java.util.Objects;

/** The ids of what the company sells. */
record Range(Map<Line, ServiceLineId> lines, Map<Work, ServiceItemId> serviceItems) {
    Range {
        lines = Map.copyOf(lines);
        serviceItems = Map.copyOf(serviceItems);
    }

    ServiceLineId id(Line line) {
        return Objects.requireNonNull(lines.get(line));
    }

    ServiceItemId id(Work work) {
        return Objects.requireNonNull(serviceItems.get(work));
    }

    Work work(ServiceItemId serviceItem) {
        return serviceItems.entrySet().stream()
                .filter(e -> e.getValue().equals(serviceItem))
                .findFirst()
                .orElseThrow()
                .getKey();
    }
}
