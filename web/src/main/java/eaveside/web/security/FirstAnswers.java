package eaveside.web.security;

import eaveside.access.Answer;
import eaveside.access.KeepAnswers;
import eaveside.access.Origin;
import eaveside.kernel.Digest;
import eaveside.web.Page;
import eaveside.web.forms.JsonWriting;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.json.JsonValue;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.ext.Provider;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.lang.annotation.Annotation;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Set;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Answers a request that is sent again as it was answered first, where its thing has been changed since and it could only be
 * refused, or where it does nothing any more: a phone or a script that lost the answer is not told that somebody else was
 * faster. Every request is carried out first, so that what can be done again is done again. Nothing that names a password
 * is kept.
 */
@Provider
@ApplicationScoped
@Priority(Priorities.AUTHENTICATION + 200)
public class FirstAnswers implements ContainerRequestFilter, ContainerResponseFilter {
    private static final Logger LOG = Logger.getLogger(FirstAnswers.class.getName());

    private static final String REQUEST = "eaveside.request";

    private static final Set<String> CHANGES = Set.of("POST", "PUT");

    /** By which a thing that has changed or is gone refuses what it once took. */
    private static final Set<Integer> TOO_LATE = Set.of(404, 409, 422);

    private static final Pattern SECRET = Pattern.compile("password|secret|token", Pattern.CASE_INSENSITIVE);

    /** What a field is called, in a form or in JSON. */
    private static final Pattern NAME = Pattern.compile("(?:^|&)([^=&]*+)=|\"([^\"]*+)\"\\s*+:");

    /**
     * An id or a version, in a form or in JSON: by it a request says which one it is, so that the same body is the same
     * request. What is set without one, such as a tax, may be set to the same twice and mean it.
     */
    private static final Pattern IDENTITY =
            Pattern.compile("(?:^|&)(?:id|version)=[^&]|\"(?:id|version)\"\\s*:\\s*(?:\"[^\"]|\\d)");

    @Inject
    KeepAnswers keepAnswers;

    @Inject
    Origin origin;

    @Inject
    Viewer viewer;

    @Override
    public void filter(ContainerRequestContext request) throws IOException {
        if (viewer.user() == null || !CHANGES.contains(request.getMethod()) || !isSmall(request.getMediaType())) {
            return;
        }
        byte[] body = request.getEntityStream().readAllBytes();
        request.setEntityStream(new ByteArrayInputStream(body));
        String said = new String(body, StandardCharsets.UTF_8);
        if (IDENTITY.matcher(said).find() && !asksForSecret(said)) {
            URI address = request.getUriInfo().getRequestUri();
            request.setProperty(
                    REQUEST,
                    Digest.sha256(String.join(
                            "\n",
                            request.getMethod(),
                            address.getRawPath(),
                            String.valueOf(address.getRawQuery()),
                            viewer.user().role().name(),
                            String.valueOf(request.getHeaderString(HttpHeaders.ACCEPT)),
                            Digest.sha256(body))));
        }
    }

    /** Whether a field is called a secret's name; that a text has the word is no secret. */
    private static boolean asksForSecret(String said) {
        return NAME.matcher(said)
                .results()
                .anyMatch(name -> SECRET.matcher(name.group()).find() || isEncoded(name.group()));
    }

    /** A name that is written otherwise than any form or script of ours writes it may be any name. */
    private static boolean isEncoded(String name) {
        return name.indexOf('%') >= 0 || name.indexOf('\\') >= 0;
    }

    /** Photos and files have digests of their own. */
    private static boolean isSmall(@Nullable MediaType type) {
        return MediaType.APPLICATION_JSON_TYPE.isCompatible(type)
                || MediaType.APPLICATION_FORM_URLENCODED_TYPE.isCompatible(type);
    }

    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) {
        if (!(request.getProperty(REQUEST) instanceof String same)) {
            return;
        }
        try {
            if (response.getStatus() < 400 && origin.hasDone()) {
                answer(response).ifPresent(answer -> keepAnswers.keep(viewer.id(), same, answer));
            } else if (response.getStatus() < 400 || TOO_LATE.contains(response.getStatus())) {
                keepAnswers.find(viewer.id(), same).ifPresent(first -> answerBy(response, first));
            }
        } catch (RuntimeException e) {
            // What was done is done and answered for, whether or not its answer can be kept.
            LOG.log(Level.WARNING, "an answer could not be kept or found", e);
        }
    }

    private static void answerBy(ContainerResponseContext response, Answer first) {
        response.setStatus(first.status());
        response.getHeaders().remove(HttpHeaders.LOCATION);
        if (first.location() != null) {
            response.getHeaders().putSingle(HttpHeaders.LOCATION, URI.create(first.location()));
        }
        if (first.body() == null) {
            response.setEntity(null);
            response.getHeaders().remove(HttpHeaders.CONTENT_TYPE);
        } else {
            response.setEntity(first.body(), new Annotation[0], MediaType.APPLICATION_JSON_TYPE);
        }
    }

    /** The answer to keep; empty where it is a page or says a secret. */
    private static Optional<Answer> answer(ContainerResponseContext response) {
        Object entity = response.getEntity();
        if (entity != null && (!(entity instanceof Record) || entity instanceof Page)) {
            return Optional.empty();
        }
        JsonValue body = entity == null ? null : JsonWriting.of(entity);
        if (body != null
                && body.asJsonObject().keySet().stream()
                        .anyMatch(name -> SECRET.matcher(name).find())) {
            return Optional.empty();
        }
        return Optional.of(new Answer(response.getStatus(), location(response), body == null ? null : body.toString()));
    }

    /** Without the host, by whose name it may be reached otherwise tomorrow. */
    private static @Nullable String location(ContainerResponseContext response) {
        Object location = response.getHeaders().getFirst(HttpHeaders.LOCATION);
        if (location == null) {
            return null;
        }
        URI uri = URI.create(location.toString());
        return uri.getRawQuery() == null ? uri.getRawPath() : uri.getRawPath() + "?" + uri.getRawQuery();
    }
}
