package eaveside.kernel;

import java.net.Inet6Address;
import java.net.InetAddress;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * Where a caller is counted: an IPv4 address, and of IPv6 the network of 56 bits, the least that a household is commonly given (RIPE-690,
 * 4.2, from memory): a subscriber has all of its addresses to choose from.
 */
public final class Network {
    private static final int BYTES_OF_A_SUBSCRIBER = 7;

    private Network() {}

    public static String of(InetAddress address) {
        return address instanceof Inet6Address
                ? HexFormat.of().formatHex(Arrays.copyOf(address.getAddress(), BYTES_OF_A_SUBSCRIBER)) + "/56"
                : address.getHostAddress();
    }

    /** What is no address is counted as it is. */
    public static String of(String address) {
        try {
            return of(InetAddress.ofLiteral(address));
        } catch (IllegalArgumentException e) {
            return address;
        }
    }
}
