package eaveside.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import org.junit.jupiter.api.Test;

/** With addresses of RFC 3849 and RFC 5737, kept for documentation. */
class NetworkTest {
    @Test
    void a_caller_has_all_addresses_of_a_network() {
        assertEquals(Network.of("2001:db8:1:200::1"), Network.of("2001:db8:1:2ff:ffff::9"));
        assertNotEquals(Network.of("2001:db8:1:200::1"), Network.of("2001:db8:1:300::1"));
        assertNotEquals(Network.of("192.0.2.1"), Network.of("192.0.2.2"));
        assertEquals(Network.of("192.0.2.1"), Network.of("::ffff:192.0.2.1"));
        assertEquals("no address", Network.of("no address"));
    }
}
