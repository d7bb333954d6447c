package eaveside.web.entrance;

import jakarta.inject.Inject;
import jakarta.servlet.ServletContextEvent;
import jakarta.servlet.ServletContextListener;
import jakarta.servlet.annotation.WebListener;
import java.lang.annotation.Annotation;
import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.glassfish.grizzly.Connection;
import org.glassfish.grizzly.Transport;
import org.glassfish.grizzly.filterchain.Filter;
import org.glassfish.grizzly.filterchain.FilterChain;
import org.glassfish.grizzly.filterchain.FilterChainBuilder;
import org.glassfish.grizzly.http.HttpServerFilter;
import org.glassfish.grizzly.nio.NIOConnection;
import org.glassfish.grizzly.nio.NIOTransport;
import org.jspecify.annotations.Nullable;

/**
 * Puts {@link Pace} and {@link Threshold} around the server's reading of requests. The server has no setting for that, so
 * its parts are asked for by name. Where they are not what they were, nothing is answered: {@link Entrance} lets nothing in
 * that has not come through these two, and the launcher, told by {@link #LISTENING}, gives up.
 */
@WebListener
public class ServerChain implements ServletContextListener {
    private static final Logger LOG = Logger.getLogger(ServerChain.class.getName());

    /** How much of an answer may wait for a caller who does not take it before its thread waits as well, in bytes. */
    private static final int UNTAKEN = 128_000;

    /** How much is read at once, in bytes: by itself the server reads as much as the network may hold, several times what comes. */
    private static final int READ_AT_ONCE = 16_384;

    /** How long a thread waits for a caller to take another part of an answer (common practice, no source). */
    private static final Duration PATIENCE = Duration.ofSeconds(15);

    private static final int MILLIS_BETWEEN = 20;

    /** A property of the process, for the launcher in it: set once the server listens and is arranged. */
    private static final String LISTENING = "eaveside.listening";

    @Inject
    Deadlines deadlines;

    @Inject
    @ConfigProperty(name = "eaveside.proxies", defaultValue = " ")
    String proxyList;

    private @Nullable ScheduledExecutorService sweeper;

    @Override
    public void contextInitialized(ServletContextEvent event) {
        Connections fresh = new Connections(proxies()::include, ServerChain::untaken);
        ScheduledExecutorService thread = Executors.newSingleThreadScheduledExecutor(
                Thread.ofPlatform().daemon().name("slow and hanging requests").factory());
        sweeper = thread;
        arrange(thread, fresh);
        thread.scheduleWithFixedDelay(() -> sweep(fresh), 1, 1, TimeUnit.SECONDS);
    }

    /** None where the option names what is no address: {@link Entrance} says so and lets nothing through. */
    private Proxies proxies() {
        try {
            return Proxies.of(proxyList);
        } catch (IllegalArgumentException e) {
            return Proxies.of("");
        }
    }

    /** At once, or as soon as the server listens: the launcher lets it only once there is something to answer with. */
    private void arrange(ScheduledExecutorService thread, Connections connections) {
        Transport transport = transport();
        if (transport == null) {
            thread.schedule(() -> arrangeLater(thread, connections), MILLIS_BETWEEN, TimeUnit.MILLISECONDS);
            return;
        }
        ((NIOTransport) transport).getAsyncQueueIO().getWriter().setMaxPendingBytesPerConnection(UNTAKEN);
        transport.setReadBufferSize(READ_AT_ONCE);
        transport.setWriteTimeout(PATIENCE.toSeconds(), TimeUnit.SECONDS);
        // At last and as a whole: no request meets half of it. A connection keeps the chain that it was accepted with.
        transport.setProcessor(arranged((FilterChain) transport.getProcessor(), connections));
        System.setProperty(LISTENING, "true");
    }

    private void arrangeLater(ScheduledExecutorService thread, Connections connections) {
        try {
            arrange(thread, connections);
        } catch (RuntimeException | LinkageError e) {
            LOG.log(Level.SEVERE, "Nothing is answered: the server is not the one that this was made for", e);
        }
    }

    @Override
    public void contextDestroyed(ServletContextEvent event) {
        if (sweeper != null) {
            sweeper.shutdownNow();
        }
    }

    private void sweep(Connections connections) {
        try {
            deadlines.sweep();
            connections.sweep();
        } catch (RuntimeException e) { // the next second sees the rest
            LOG.log(Level.WARNING, "what is slow was not ended", e);
        }
    }

    private static long untaken(Connection<?> connection) {
        return connection instanceof NIOConnection known
                ? known.getAsyncWriteQueue().spaceInBytes()
                : 0;
    }

    private static FilterChain arranged(FilterChain chain, Connections connections) {
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

    /**
     * What the server listens with, null while it does not: {@code locator.getService(NetworkListener)}, then the service's own
     * listener of that.
     */
    private static @Nullable Transport transport() {
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
                return null;
            }
            Object underlying =
                    proxy.getClass().getMethod("getUnderlyingListener").invoke(proxy);
            Transport transport =
                    (Transport) underlying.getClass().getMethod("getTransport").invoke(underlying);
            return transport.isStopped() ? null : transport; // where it could not have its port
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the server is not the one that this was made for", e);
        }
    }
}
