package eaveside.web.walkthrough;

import eaveside.web.testing.Browser;
import eaveside.web.testing.OnDemo;
import eaveside.web.testing.Server;
import java.io.IOException;
import java.sql.SQLException;
import org.junit.jupiter.api.Test;

/** The main job on the demo company of today. */
@OnDemo
class WalkthroughBrowserIT {
    @Test
    void one_job_from_the_quote_to_the_margin() throws IOException, SQLException {
        Server server = Server.demo();
        try (Browser browser = new Browser(server.clock())) {
            new Walkthrough(server, browser).oneJobFromTheQuoteToTheMargin();
        }
    }
}
