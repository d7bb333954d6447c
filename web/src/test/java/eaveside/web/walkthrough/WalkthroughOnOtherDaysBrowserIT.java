package eaveside.web.walkthrough;

import eaveside.web.testing.Browser;
import eaveside.web.testing.OnItsOwnCompany;
import eaveside.web.testing.Server;
import java.io.IOException;
import java.sql.SQLException;
import java.time.Instant;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The main job on days that calendars stumble over: by the server's clock and by the clocks of everybody's browser. */
@Tag("long")
@OnItsOwnCompany
class WalkthroughOnOtherDaysBrowserIT {
    @ParameterizedTest
    @ValueSource(strings = {"2027-01-31T18:00:00Z", "2027-01-02T18:00:00Z", "2028-02-29T18:00:00Z"})
    void one_job_from_the_quote_to_the_margin(String present) throws IOException, SQLException {
        Server server = Server.demoAt(Instant.parse(present));
        try (Browser browser = new Browser(server.clock())) {
            new Walkthrough(server, browser).oneJobFromTheQuoteToTheMargin();
        } finally {
            server.stop();
        }
    }
}
