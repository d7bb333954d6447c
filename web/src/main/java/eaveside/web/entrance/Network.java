package eaveside.web.entrance;

import java.net.Inet6Address;
import java.net.InetAddress;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * Where a caller is counted: an IPv4 address, and of IPv6 the network of 64 bits, since each subscriber has at least one of those to
 * themselves (RFC 6177, 2).
 */
final class Network {
    private static final int BYTES_OF_A_SUBSCRIBER = 8;

    private Network() {}

    static String of(InetAddress address) {
        byte[] bytes = address.getAddress();
        return address instanceof Inet6Address
                ? HexFormat.of().formatHex(Arrays.copyOf(bytes, BYTES_OF_A_SUBSCRIBER))
                : address.getHostAddress();
    }

    /** What is no address is counted as it is. */
    static String of(String address) {
        try {
            return of(InetAddress.ofLiteral(address));
        } catch (IllegalArgumentException e) {
            return address;
        }
    }
}
