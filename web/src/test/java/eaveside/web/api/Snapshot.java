package eaveside.web.api;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What is held fast, in a file beside the tests' other resources. Run with {@code -Dsnapshots.write=true} to write the
 * files anew after a change that was meant; the difference then shows in the commit.
 */
final class Snapshot {
    private static final Path FOLDER = Path.of("src", "test", "resources", "api");
    private static final boolean WRITE = Boolean.getBoolean("snapshots.write");
    private static final int AROUND = 4;

    private Snapshot() {}

    /** Of the files that there are, without their ending. */
    static Set<String> names() {
        try (var files = Files.list(FOLDER)) {
            return files.map(file -> file.getFileName().toString().replaceFirst("\\.txt$", ""))
                    .collect(Collectors.toCollection(TreeSet::new));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Fails with the lines that differ where the file says something else. */
    static void matches(String name, String text) {
        Path file = FOLDER.resolve(name);
        try {
            if (WRITE) {
                Files.createDirectories(FOLDER);
                Files.writeString(file, text);
                return;
            }
            if (!Files.exists(file)) {
                fail("there is no " + file + " yet; run with -Dsnapshots.write=true to write it");
            }
            String expected = Files.readString(file);
            if (!expected.equals(text)) {
                fail(file + " says something else (- as held, + as answered now; if it was meant, run with"
                        + " -Dsnapshots.write=true and look at the difference):\n"
                        + difference(expected.lines().toList(), text.lines().toList()));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The lines of the one that are not in the other and the reverse, each with what stands around it. */
    static String difference(List<String> before, List<String> after) {
        List<String> merged = merged(before, after);
        BitSet shown = new BitSet();
        for (int i = 0; i < merged.size(); i++) {
            if (!merged.get(i).startsWith(" ")) {
                shown.set(Math.max(0, i - AROUND), Math.min(merged.size(), i + AROUND + 1));
            }
        }
        StringBuilder text = new StringBuilder();
        int last = -1;
        for (int i = shown.nextSetBit(0); i >= 0; i = shown.nextSetBit(i + 1)) {
            text.append(i > last + 1 ? "  ...\n" : "").append(merged.get(i)).append('\n');
            last = i;
        }
        return text.toString();
    }

    /** Both texts in one, by their longest common lines. */
    private static List<String> merged(List<String> before, List<String> after) {
        int[][] common = new int[before.size() + 1][after.size() + 1];
        for (int i = before.size() - 1; i >= 0; i--) {
            for (int j = after.size() - 1; j >= 0; j--) {
                common[i][j] = before.get(i).equals(after.get(j))
                        ? common[i + 1][j + 1] + 1
                        : Math.max(common[i + 1][j], common[i][j + 1]);
            }
        }
        List<String> merged = new ArrayList<>();
        int i = 0;
        int j = 0;
        while (i < before.size() || j < after.size()) {
            if (i < before.size() && j < after.size() && before.get(i).equals(after.get(j))) {
                merged.add("  " + before.get(i++));
                j++;
            } else if (j >= after.size() || (i < before.size() && common[i + 1][j] >= common[i][j + 1])) {
                merged.add("- " + before.get(i++));
            } else {
                merged.add("+ " + after.get(j++));
            }
        }
        return merged;
    }
}
