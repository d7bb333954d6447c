package eaveside.web.entrance;

import jakarta.inject.Inject;
import jakarta.servlet.ServletContextEvent;
import jakarta.servlet.ServletContextListener;
import jakarta.servlet.annotation.WebListener;
import java.lang.annotation.Annotation;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.glassfish.grizzly.Transport;
import org.glassfish.grizzly.filterchain.Filter;
import org.glassfish.grizzly.filterchain.FilterChain;
import org.glassfish.grizzly.filterchain.FilterChainBuilder;
import org.glassfish.grizzly.http.HttpServerFilter;
import org.glassfish.grizzly.nio.NIOTransport;
import org.jspecify.annotations.Nullable;

/**
 * Puts {@link Pace} and {@link Threshold} around the server's reading of requests. The server has no setting for that, so
 * its parts are asked for by name; where they are not what they were, the application does not start.
 */
@WebListener
public class ServerChain implements ServletContextListener {
    private static final Logger LOG = Logger.getLogger(ServerChain.class.getName());

    /** How much of an answer may wait for a caller who does not take it before its thread waits as well, in bytes. */
    private static final int UNTAKEN = 128_000;

    /**
     * How much is read at once, in bytes. What is kept of a body takes the room of what was read for it, however little came: by itself the
     * server reads as much as the network may hold, several times what comes.
     */
    private static final int READ_AT_ONCE = 16_384;

    /** How long a thread waits for a caller to take another part of an answer (common practice, no source). */
    private static final Duration PATIENCE = Duration.ofSeconds(15);

    private static final int MILLIS_BETWEEN = 20;

    @Inject
    Deadlines deadlines;

    private final Connections connections = new Connections();
    private @Nullable ScheduledExecutorService sweeper;

    @Override
    public void contextInitialized(ServletContextEvent event) {
        ScheduledExecutorService thread = Executors.newSingleThreadScheduledExecutor(
                Thread.ofPlatform().daemon().name("slow and hanging requests").factory());
        sweeper = thread;
        arrange(thread);
        thread.scheduleWithFixedDelay(this::sweep, 1, 1, TimeUnit.SECONDS);
    }

    /**
     * At once, or as soon as the server listens: the launcher lets it only once there is something to answer with. What comes
     * before this is refused by {@link Entrance}.
     */
    private void arrange(ScheduledExecutorService thread) {
        List<Transport> transports = transports();
        if (transports.isEmpty()) {
            thread.schedule(() -> arrangeLater(thread), MILLIS_BETWEEN, TimeUnit.MILLISECONDS);
        }
        for (Transport transport : transports) {
            // As a whole, so that no request meets half of it.
            transport.setProcessor(arranged((FilterChain) transport.getProcessor()));
            ((NIOTransport) transport).getAsyncQueueIO().getWriter().setMaxPendingBytesPerConnection(UNTAKEN);
            transport.setReadBufferSize(READ_AT_ONCE);
            transport.setWriteTimeout(PATIENCE.toSeconds(), TimeUnit.SECONDS);
        }
    }

    private void arrangeLater(ScheduledExecutorService thread) {
        try {
            arrange(thread);
        } catch (RuntimeException e) {
            LOG.log(Level.SEVERE, "Nothing is answered: the server is not the one that this was made for", e);
        }
    }

    @Override
    public void contextDestroyed(ServletContextEvent event) {
        if (sweeper != null) {
            sweeper.shutdownNow();
        }
    }

    private void sweep() {
        try {
            deadlines.sweep();
            connections.sweep();
        } catch (RuntimeException e) { // the next second sees the rest
            LOG.log(Level.WARNING, "what is slow was not ended", e);
        }
    }

    private FilterChain arranged(FilterChain chain) {
        FilterChainBuilder parts = FilterChainBuilder.stateless();
        boolean reads = false;
        for (Filter filter : chain) {
            if (filter instanceof HttpServerFilter) {
                parts.add(new Pace(connections)).add(filter).add(new Threshold(connections));
                reads = true;
            } else {
                parts.add(filter);
            }
        }
        if (!reads) {
            throw new IllegalStateException("the server reads no requests");
        }
        return parts.build();
    }

    /** What the server listens with: {@code locator.getAllServices(NetworkListener)}, then the service's listener of each. */
    private static List<Transport> transports() {
        try {
            ClassLoader server = FilterChain.class.getClassLoader();
            Object locator = server.loadClass("org.glassfish.internal.api.Globals")
                    .getMethod("getDefaultBaseServiceLocator")
                    .invoke(null);
            Class<?> serviceType = server.loadClass("com.sun.enterprise.v3.services.impl.GrizzlyService");
            Class<?> listenerType = server.loadClass("org.glassfish.grizzly.config.dom.NetworkListener");
            Object service = locator.getClass()
                    .getMethod("getService", Class.class, Annotation[].class)
                    .invoke(locator, serviceType, new Annotation[0]);
            Object listener = locator.getClass()
                    .getMethod("getService", Class.class, String.class, Annotation[].class)
                    .invoke(locator, listenerType, "http-listener", new Annotation[0]);
            @Nullable
            Object proxy =
                    serviceType.getMethod("lookupNetworkProxy", listenerType).invoke(service, listener);
            if (proxy == null) {
                return List.of();
            }
            Object underlying =
                    proxy.getClass().getMethod("getUnderlyingListener").invoke(proxy);
            return List.of(
                    (Transport) underlying.getClass().getMethod("getTransport").invoke(underlying));
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the server is not the one that this was made for", e);
        }
    }
}
