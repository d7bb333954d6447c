package eaveside.web.entrance;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.glassfish.grizzly.Buffer;
import org.glassfish.grizzly.filterchain.BaseFilter;
import org.glassfish.grizzly.filterchain.FilterChainContext;
import org.glassfish.grizzly.filterchain.FilterChainEvent;
import org.glassfish.grizzly.filterchain.NextAction;
import org.glassfish.grizzly.http.HttpContent;
import org.glassfish.grizzly.http.HttpEvents;
import org.glassfish.grizzly.http.HttpRequestPacket;
import org.glassfish.grizzly.http.HttpResponsePacket;
import org.glassfish.grizzly.http.util.Header;
import org.glassfish.grizzly.http.util.HttpStatus;
import org.glassfish.grizzly.memory.Buffers;
import org.glassfish.grizzly.memory.MemoryManager;
import org.jspecify.annotations.Nullable;

/**
 * Stands between the reading of requests and the application: lets a request through only when its head is beyond doubt and
 * its body is there as a whole. Until then no thread waits for it, so that any number of slow senders hold nothing but
 * their connections.
 */
final class Threshold extends BaseFilter {
    /** Under this name a request says to the application how large its body is, in bytes. */
    static final String SIZE_OF_BODY = "eaveside.entrance.size-of-body";

    private static final Logger LOG = Logger.getLogger(Threshold.class.getName());

    /** After how many more bytes of a body the room is looked at. */
    private static final int STEP = 65_536;

    private static final int SECONDS_TO_WAIT = 5;

    private final Connections connections;

    Threshold(Connections connections) {
        this.connections = connections;
    }

    @Override
    public NextAction handleRead(FilterChainContext context) throws IOException {
        HttpContent content = context.getMessage();
        HttpRequestPacket request = (HttpRequestPacket) content.getHttpHeader();
        Progress progress = connections.of(context.getConnection());
        // From somebody who has gone meanwhile, or in one piece with what was refused.
        if (progress == null || !context.getConnection().isOpen() || progress.isLeaving()) {
            return context.getStopAction();
        }
        if (!progress.isReceiving()) {
            @Nullable String wrong = Heads.wrong(request, progress.head());
            if (wrong != null) {
                return refuse(context, request, progress, HttpStatus.BAD_REQUEST_400, wrong);
            }
            // RFC 9112, 6.3: the server may ask for it. Where the parts of such a body end is read in many ways, and
            // what comes
            // behind the last may set fields that were judged before.
            if (request.isChunked()) {
                return refuse(
                        context,
                        request,
                        progress,
                        HttpStatus.LENGTH_REQUIRED_411,
                        "the length of the body must be told at its beginning (Content-Length)");
            }
        }
        int bytes = content.getContent().remaining();
        int before = progress.held();
        progress.holds(bytes, System.nanoTime());
        int most = Sizes.most(request);
        if (bytes > most || request.getContentLength() > most || progress.parts() > Sizes.mostParts(bytes)) {
            // A phone whose session is gone keeps what it has to send until somebody signs in, and no less than before.
            if (Sizes.isToSignInFirst(request)) {
                return refuse(context, request, progress, HttpStatus.UNAUTHORIZED_401, "sign in first");
            }
            return refuse(
                    context,
                    request,
                    progress,
                    HttpStatus.REQUEST_ENTITY_TOO_LARGE_413,
                    "the body is larger than " + most / 1000 + " kB, or comes in too many parts");
        }
        if (content.isLast()) {
            @Nullable String tooMany = Sizes.tooMany(request, content.getContent());
            if (tooMany != null) {
                return refuse(context, request, progress, HttpStatus.REQUEST_ENTITY_TOO_LARGE_413, tooMany);
            }
            if (connections.isBusyWith(progress) || connections.isFullFor(bytes)) {
                return refuse(
                        context,
                        request,
                        progress,
                        HttpStatus.SERVICE_UNAVAILABLE_503,
                        "too much is worked on at this moment. Try again in a few seconds");
            }
            connections.makeRoomForAnswers();
            if (!connections.hasTakenWhatItAskedFor(context.getConnection())) {
                return context.getStopAction();
            }
            if (progress.isFollowed()) {
                request.getProcessingState().setKeepAlive(false);
            }
            request.setAttribute(SIZE_OF_BODY, bytes);
            progress.answers(System.nanoTime());
            return context.getInvokeAction();
        }
        if (request.requiresAcknowledgement()) {
            acknowledge(context, request);
        }
        // To look at all connections costs more than a small part does.
        if (progress.parts() == 1 || before / STEP != bytes / STEP) {
            connections.makeRoom();
        }
        return context.getStopAction(content);
    }

    /**
     * The server speaks one protocol: whoever offers another is answered in this one (RFC 9110, 7.8). Once an answer is complete,
     * the request's body takes no room any more.
     */
    @Override
    public NextAction handleEvent(FilterChainContext context, FilterChainEvent event) {
        if (event instanceof HttpEvents.ResponseCompleteEvent) {
            Progress progress = connections.of(context.getConnection());
            if (progress != null) {
                progress.rests(System.nanoTime());
            }
        }
        if (event instanceof HttpEvents.IncomingHttpUpgradeEvent offered) {
            offered.getHttpHeader().setIgnoreContentModifiers(false);
            offered.getHttpHeader().getUpgradeDC().recycle();
        }
        return context.getInvokeAction();
    }

    /** Whoever asks first whether the body is wanted (Expect: 100-continue) is told so, once. */
    private static void acknowledge(FilterChainContext context, HttpRequestPacket request) {
        HttpResponsePacket response = request.getResponse();
        response.setAcknowledgement(true);
        HttpStatus.CONINTUE_100.setValues(response);
        context.write(response);
        response.acknowledged();
    }

    private static NextAction refuse(
            FilterChainContext context, HttpRequestPacket request, Progress progress, HttpStatus status, String why) {
        LOG.log(Level.FINE, () -> "refused " + context.getConnection().getPeerAddress() + ": " + why);
        progress.leaves(System.nanoTime());
        HttpResponsePacket response = request.getResponse();
        status.setValues(response);
        boolean later = status == HttpStatus.SERVICE_UNAVAILABLE_503;
        var answer = new PlainAnswer(
                status.getStatusCode(), "refused", "The request was refused: " + why, later ? SECONDS_TO_WAIT : null);
        String accepted = request.getHeader(Header.Accept);
        boolean script = accepted == null || !accepted.contains("text/html");
        Buffer body = Buffers.wrap(
                MemoryManager.DEFAULT_MEMORY_MANAGER,
                answer.body(script, request.getMethod().getMethodString()),
                StandardCharsets.UTF_8);
        SafeAnswers.HEADERS.forEach(response::setHeader);
        response.setContentType(answer.type(script));
        response.setContentLength(body.remaining());
        response.setHeader(Header.Connection, "close");
        if (later) {
            response.setHeader("Retry-After", String.valueOf(SECONDS_TO_WAIT));
        }
        context.write(HttpContent.builder(response).content(body).last(true).build());
        return context.getStopAction();
    }
}
