package eaveside.web.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The shapes are those that browsers have today, the names are made up: common practice, no source. */
class BrowserNameTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) Wanderer/156.0.0.0 Safari/537.36"
                        + " | Wanderer 156, Linux x86_64",
                "Mozilla/5.0 (Linux; Android 15; Pane 9) AppleWebKit/537.36 (KHTML, like Gecko) Wanderer/156.0.0.0 Mobile"
                        + " Safari/537.36 | Wanderer 156, Android 15",
                "Mozilla/5.0 (Pane; CPU Pane OS 18_1 like others) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.1"
                        + " Mobile/15E148 Safari/604.1 | Safari 604, Pane",
                "Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Ladder/140.0 | Ladder 140, Linux x86_64",
                "script of the office|script of the office",
                "curl/8.5.0|curl/8.5.0",
                "''|''"
            })
    void a_browser_is_called_by_its_own_name(String agent, String name) {
        assertEquals(name, BrowserName.of(agent));
    }
}
