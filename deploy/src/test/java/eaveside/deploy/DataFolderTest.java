package eaveside.deploy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DataFolderTest {
    /** Asks for the folder from a process of its own, since a lock counts between processes. */
    static final class Rival {
        public static void main(String[] arguments) {
            boolean taken = DataFolder.open(Path.of(arguments[0])).tryLock("as a rival");
            System.exit(taken ? 0 : 3);
        }
    }

    @Test
    void a_folder_in_use_stays_locked_through_garbage_collections(@TempDir Path folder) throws Exception {
        DataFolder.open(folder).lock("for the test");
        for (int i = 0; i < 5; i++) {
            System.gc();
            Thread.sleep(50);
        }
        int answer = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Rival.class.getName(),
                        folder.toString())
                .inheritIO()
                .start()
                .waitFor();
        assertEquals(3, answer, "a rival got the folder of a running process");
    }
}
