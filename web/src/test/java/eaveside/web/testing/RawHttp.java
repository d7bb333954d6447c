package eaveside.web.testing;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;

/** A connection on which a test says what no well-behaved client would. */
public final class RawHttp implements AutoCloseable {
    private final Socket socket;

    private RawHttp(Socket socket) {
        this.socket = socket;
    }

    public static RawHttp to(URI server) {
        try {
            return new RawHttp(new Socket(server.getHost(), server.getPort()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Takes as little as can be of what is sent to it, before it reads. */
    public static RawHttp narrow(URI server) {
        try {
            Socket socket = new Socket();
            socket.setReceiveBufferSize(4_096);
            socket.connect(new InetSocketAddress(server.getHost(), server.getPort()));
            return new RawHttp(socket);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** From an address of this machine of one's choice. */
    public static RawHttp from(String address, URI server) {
        try {
            return new RawHttp(new Socket(server.getHost(), server.getPort(), InetAddress.ofLiteral(address), 0));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Sends one text on a connection of its own and reads the whole answer. */
    public static String ask(URI server, String text) {
        try (var raw = to(server)) {
            return raw.send(text).answer(Duration.ofSeconds(20));
        }
    }

    public RawHttp send(String text) {
        return send(text.getBytes(StandardCharsets.ISO_8859_1));
    }

    public RawHttp send(byte[] bytes) {
        try {
            socket.getOutputStream().write(bytes);
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What comes until the other side closes, or what came until the time was over. */
    public String answer(Duration patience) {
        var all = new ByteArrayOutputStream();
        var buffer = new byte[65_536];
        long end = System.nanoTime() + patience.toNanos();
        try {
            while (System.nanoTime() < end) {
                socket.setSoTimeout(Math.max(1, (int) ((end - System.nanoTime()) / 1_000_000)));
                int n = socket.getInputStream().read(buffer);
                if (n < 0) {
                    break;
                }
                all.write(buffer, 0, n);
            }
        } catch (SocketTimeoutException e) {
            // As long as the test wanted to wait.
        } catch (IOException e) {
            if (all.size() == 0) {
                return "";
            }
        }
        return all.toString(StandardCharsets.ISO_8859_1);
    }

    /** Whether the other side has closed within that time, having said nothing more. */
    public boolean isClosedWithin(Duration patience) {
        try {
            socket.setSoTimeout((int) patience.toMillis());
            return socket.getInputStream().read() < 0;
        } catch (SocketTimeoutException e) {
            return false;
        } catch (IOException e) {
            return true;
        }
    }

    @Override
    public void close() {
        try {
            socket.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
