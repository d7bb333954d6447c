package eaveside.web.search;

import java.util.List;

/**
 * What a search found, the best of each type first.
 *
 * @param  text    as it was typed, without blanks around it
 * @param  groups  none of them empty
 * @param  spelled whether it was found as it was typed; otherwise this is what comes close
 */
public record Hits(String text, List<Group> groups, boolean spelled) {
    public Hits {
        groups = List.copyOf(groups);
    }

    /** What is found; also the order in which it is shown, unless a number was typed. */
    public enum Type {
        CUSTOMER,
        SITE,
        CONTACT,
        VISIT,
        QUOTE,
        INVOICE,
        PAYMENT,
        ITEM,
        LOT
    }

    /** Hits of one type. */
    public record Group(Type type, List<Hit> hits) {
        public Group {
            hits = List.copyOf(hits);
        }
    }

    /**
     * One hit.
     *
     * @param  name   what it is called
     * @param  detail what tells it from others
     * @param  href   where it opens
     */
    public record Hit(String name, String detail, String href) {}

    public boolean isEmpty() {
        return groups.isEmpty();
    }

    /** How many there are in all. */
    public int count() {
        return groups.stream().mapToInt(group -> group.hits().size()).sum();
    }
}
