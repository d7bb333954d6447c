package eaveside.web.entrance;

import java.net.InetAddress;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The proxies that stand before the program by the option {@code --proxy}, and what they say about whoever comes through
 * them: {@code X-Forwarded-For}, {@code X-Forwarded-Proto}, {@code X-Forwarded-Host}. From any other address these headers
 * mean nothing. The header {@code Forwarded} of RFC 7239 is never read: proxies that do not know it pass on what a caller
 * has written there.
 */
final class Proxies {
    private final List<Network> networks;

    private Proxies(List<Network> networks) {
        this.networks = networks;
    }

    /**
     * Addresses and networks such as {@code 127.0.0.1, 10.0.0.0/8, fd00::/8}; none where the text is empty. Refuses what is no
     * address.
     */
    static Proxies of(String list) {
        return new Proxies(Arrays.stream(list.split("[,\\s]+"))
                .filter(text -> !text.isEmpty())
                .map(Network::of)
                .toList());
    }

    boolean include(String address) {
        byte @Nullable [] bytes = bytes(address);
        return bytes != null && networks.stream().anyMatch(network -> network.includes(bytes));
    }

    /**
     * The address of the caller: each proxy adds at the end whom it heard from, so it is the last one that is no proxy of ours.
     *
     * @param  peer         whoever the connection is with, a proxy of ours
     * @param  forwardedFor the header's values, in their order
     */
    String caller(String peer, List<String> forwardedFor) {
        List<String> way = forwardedFor.stream()
                .flatMap(value -> Arrays.stream(value.split(",", -1)))
                .map(Proxies::withoutPort)
                .toList();
        String caller = peer;
        for (String said : way.reversed()) {
            if (bytes(said) == null) {
                return caller; // what nobody's proxy would write; whoever passed it on is the last that is known
            }
            caller = said;
            if (!include(said)) {
                return caller;
            }
        }
        return caller;
    }

    private static String withoutPort(String said) {
        String address = said.strip();
        if (address.startsWith("[")) {
            return address.substring(1).replaceFirst("](:\\d+)?$", "");
        }
        return address.matches("[0-9.]+:\\d+") ? address.substring(0, address.indexOf(':')) : address;
    }

    private static byte @Nullable [] bytes(String address) {
        try {
            return InetAddress.ofLiteral(address).getAddress();
        } catch (IllegalArgumentException e) {
            return null;
        }
    }

    private record Network(byte[] address, int bits) {
        static Network of(String text) {
            String[] parts = text.split("/", 2);
            byte @Nullable [] address = bytes(parts[0]);
            if (address == null || parts.length > 1 && !parts[1].matches("\\d{1,3}")) {
                throw new IllegalArgumentException(
                        "'" + text + "' is no address of a proxy, such as 127.0.0.1 or 10.0.0.0/8");
            }
            int most = address.length * 8;
            int bits = parts.length > 1 ? Integer.parseInt(parts[1]) : most;
            if (bits > most) {
                throw new IllegalArgumentException("'" + text + "' is no network: it has at most " + most + " bits");
            }
            return new Network(address, bits);
        }

        boolean includes(byte[] other) {
            if (other.length != address.length) {
                return false;
            }
            for (int i = 0; i < bits; i++) {
                int mask = 0x80 >> i % 8;
                if ((address[i / 8] & mask) != (other[i / 8] & mask)) {
                    return false;
                }
            }
            return true;
        }
    }
}
