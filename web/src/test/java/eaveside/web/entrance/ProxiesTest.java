package eaveside.web.entrance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Addresses from the blocks that RFC 5737 and RFC 3849 keep for documentation. */
class ProxiesTest {
    private final Proxies proxies = Proxies.of("192.0.2.1, 198.51.100.0/25,2001:db8:1::/48");

    @Test
    void knows_its_proxies_and_nobody_else() {
        for (String proxy : List.of("192.0.2.1", "198.51.100.0", "198.51.100.127", "2001:db8:1:ffff::1")) {
            assertTrue(proxies.include(proxy), proxy);
        }
        for (String other :
                List.of("192.0.2.2", "198.51.100.128", "2001:db8:2::1", "127.0.0.1", "", "localhost", "192.0.2.1.")) {
            assertFalse(proxies.include(other), other);
        }
        assertFalse(Proxies.of("").include("127.0.0.1"));
        assertFalse(Proxies.of(" ").include("127.0.0.1"));
        assertTrue(Proxies.of("0.0.0.0/0").include("203.0.113.9"));
    }

    @Test
    void the_caller_is_the_last_on_the_way_that_is_no_proxy() {
        assertEquals("203.0.113.7", proxies.caller("192.0.2.1", List.of("203.0.113.7")));
        assertEquals(
                "203.0.113.7",
                proxies.caller("192.0.2.1", List.of("10.0.0.1, 203.0.113.7")),
                "not what it says itself");
        assertEquals("203.0.113.7", proxies.caller("192.0.2.1", List.of("10.0.0.1", "203.0.113.7, 198.51.100.4")));
        assertEquals("198.51.100.4", proxies.caller("192.0.2.1", List.of("198.51.100.4")), "a proxy asks for itself");
        assertEquals("192.0.2.1", proxies.caller("192.0.2.1", List.of()));
        assertEquals("192.0.2.1", proxies.caller("192.0.2.1", List.of("203.0.113.7, unknown")));
        assertEquals("192.0.2.1", proxies.caller("192.0.2.1", List.of("")));
        assertEquals("203.0.113.7", proxies.caller("192.0.2.1", List.of("203.0.113.7:51234")));
        assertEquals("2001:db8:9::1", proxies.caller("192.0.2.1", List.of("[2001:db8:9::1]:443")));
        assertEquals("2001:db8:9::1", proxies.caller("192.0.2.1", List.of("2001:db8:9::1")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"proxy.example.com", "192.0.2.0/33", "192.0.2.0/x", "2001:db8::/129", "1.2.3.4.5", "/8"})
    void refuses_what_is_no_address(String text) {
        assertThrows(IllegalArgumentException.class, () -> Proxies.of(text));
    }
}
