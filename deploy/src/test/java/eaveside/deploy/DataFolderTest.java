package eaveside.deploy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
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
    void a_folder_that_others_could_read_is_closed_to_them(@TempDir Path parent) throws Exception {
        Path folder = Files.createDirectory(parent.resolve("data"));
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        DataFolder.open(folder).lock("for the test");
        assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(folder)));
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        DataFolder.open(folder);
        assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(folder)));
    }

    @Test
    void a_large_log_is_put_aside_and_one_before_it_is_kept(@TempDir Path folder) throws Exception {
        Path log = folder.resolve("postgres.log");
        DataFolder.putAside(log);
        Files.writeString(log, "small");
        DataFolder.putAside(log);
        assertEquals("small", Files.readString(log));
        for (String sign : List.of("a", "b")) {
            Files.writeString(log, sign.repeat((int) DataFolder.LARGE_LOG + 1));
            DataFolder.putAside(log);
            assertFalse(Files.exists(log));
            assertTrue(Files.readString(folder.resolve("postgres.log.1")).startsWith(sign));
        }
    }

    @Test
    void a_folder_of_other_things_is_refused_and_left_as_it_is(@TempDir Path parent) throws Exception {
        Path folder = Files.createDirectory(parent.resolve("home"));
        Files.writeString(folder.resolve("letter.txt"), "to somebody");
        Files.createDirectory(folder.resolve("log"));
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        assertThrows(Failure.class, () -> DataFolder.open(folder));
        assertEquals("rwxr-xr-x", PosixFilePermissions.toString(Files.getPosixFilePermissions(folder)));
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
