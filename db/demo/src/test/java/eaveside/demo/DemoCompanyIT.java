package eaveside.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.testing.Bench;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class DemoCompanyIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    @Test
    void theHistoryIsMadeByTheUseCasesAndItsBooksAreTrue() {
        long start = System.nanoTime();
        List<DemoLogin> logins = bench.get(LoadDemoCompany.class).load(DemoDatabase.timeOf(bench));
        System.getLogger("demo")
                .log(System.Logger.Level.INFO, "Loaded in " + Duration.ofNanos(System.nanoTime() - start));
        assertEquals(7, logins.size());
        bench.verifyBooks();
    }
}
