package eaveside.architecture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * The graph of the modules as a picture: everything stands below all that it leans on, and close above what leans on it. A line
 * that only repeats a way over other modules is left out.
 */
final class ModulePicture {
    private static final int WIDE = 118;
    private static final int HIGH = 34;
    private static final int COLUMN = 146;
    private static final int ROW = 74;
    private static final int EDGE = 14;

    private final Modules modules;
    private final Map<String, int[]> corners = new HashMap<>();
    private int width;
    private int height;

    private ModulePicture(Modules modules) {
        this.modules = modules;
    }

    static String of(Modules modules) {
        return new ModulePicture(modules).drawn();
    }

    private String drawn() {
        place();
        StringBuilder svg = new StringBuilder(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" font-family=\"sans-serif\""
                        + " font-size=\"13\" role=\"img\" aria-label=\"Modules and what they lean on\">%n"
                        + "<rect width=\"100%%\" height=\"100%%\" fill=\"#ffffff\"/>%n",
                width,
                height,
                width,
                height));
        for (String name : modules.names()) {
            for (String other : shortest(name)) {
                int[] from = corners.get(name);
                int[] to = corners.get(other);
                int x1 = from[0] + WIDE / 2;
                int y1 = from[1];
                int x2 = to[0] + WIDE / 2;
                int y2 = to[1] + HIGH;
                int bend = (y1 - y2) / 2;
                svg.append(String.format(
                        Locale.ROOT,
                        "<path d=\"M%d %d C%d %d %d %d %d %d\" fill=\"none\" stroke=\"#8a99a8\" stroke-width=\"1.2\"/>%n",
                        x1,
                        y1,
                        x1,
                        y1 - bend,
                        x2,
                        y2 + bend,
                        x2,
                        y2));
            }
        }
        for (String name : modules.names()) {
            int[] at = corners.get(name);
            svg.append(String.format(
                    Locale.ROOT,
                    "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" rx=\"6\" fill=\"%s\" stroke=\"#2f4858\"/>"
                            + "<text x=\"%d\" y=\"%d\" text-anchor=\"middle\" fill=\"#16242d\">%s</text>%n",
                    at[0],
                    at[1],
                    WIDE,
                    HIGH,
                    modules.services().contains(name) ? "#e3f1ec" : "#eef1f5",
                    at[0] + WIDE / 2,
                    at[1] + HIGH / 2 + 5,
                    name));
        }
        return svg.append("</svg>\n").toString().replace("\r\n", "\n");
    }

    /** Rows by the longest way down; within a row by what its modules lean on, left to right. */
    private void place() {
        Map<Integer, List<String>> rows = new TreeMap<>();
        for (String name : modules.names()) {
            rows.computeIfAbsent(depth(name), row -> new ArrayList<>()).add(name);
        }
        int most = rows.values().stream().mapToInt(List::size).max().orElse(1);
        width = 2 * EDGE + (most - 1) * COLUMN + WIDE;
        height = 2 * EDGE + (rows.size() - 1) * ROW + HIGH;
        rows.forEach((row, names) -> {
            names.sort(Comparator.<String>comparingDouble(this::pull).thenComparing(name -> name));
            int left = (width - (names.size() - 1) * COLUMN - WIDE) / 2;
            for (int i = 0; i < names.size(); i++) {
                corners.put(names.get(i), new int[] {left + i * COLUMN, EDGE + row * ROW});
            }
        });
    }

    private int depth(String name) {
        return modules.names().stream().mapToInt(this::below).max().orElse(0) - below(name);
    }

    /** The longest way down, to a module that none leans on: so each stands close above those that lean on it. */
    private int below(String name) {
        return modules.names().stream()
                .filter(other -> modules.leansOn(other).contains(name))
                .mapToInt(other -> below(other) + 1)
                .max()
                .orElse(0);
    }

    private double pull(String name) {
        return shortest(name).stream()
                .mapToInt(other -> corners.get(other)[0])
                .average()
                .orElse(0);
    }

    private List<String> shortest(String name) {
        Set<String> own = modules.leansOn(name);
        return own.stream()
                .filter(other -> own.stream()
                        .noneMatch(
                                way -> !way.equals(other) && modules.reach(way).contains(other)))
                .toList();
    }
}
