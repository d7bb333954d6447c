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
import jakarta.json.Json;
import jakarta.json.JsonException;
import jakarta.json.JsonReader;
import jakarta.json.JsonValue;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.ext.Provider;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.URI;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Answers a request that is sent again as it was answered first, also where its thing has been changed since: a phone or a
 * script that lost the answer is not told that somebody else was faster. This is for requests that say by an id or a version
 * which one they are, and for answers that came of a deed: what reckons is reckoned anew. Nothing that names a password is
 * kept.
 */
@Provider
@ApplicationScoped
@Priority(Priorities.AUTHENTICATION + 200)
public class FirstAnswers implements ContainerRequestFilter, ContainerResponseFilter {
    private static final Logger LOG = Logger.getLogger(FirstAnswers.class.getName());

    private static final String REQUEST = "eaveside.request";

    private static final Set<String> CHANGES = Set.of("POST", "PUT", "DELETE");

    @Inject
    KeepAnswers keepAnswers;

    @Inject
    Origin origin;

    @Inject
    Viewer viewer;

    @Override
    public void filter(ContainerRequestContext request) throws IOException {
        if (viewer.user() == null || !CHANGES.contains(request.getMethod()) || !request.hasEntity()) {
            return;
        }
        boolean json = MediaType.APPLICATION_JSON_TYPE.isCompatible(request.getMediaType());
        if (!json && !MediaType.APPLICATION_FORM_URLENCODED_TYPE.isCompatible(request.getMediaType())) {
            return;
        }
        byte[] body = request.getEntityStream().readAllBytes();
        request.setEntityStream(new ByteArrayInputStream(body));
        Collection<String> names = json ? members(body) : fields(body);
        boolean secret = names.stream().anyMatch(name -> name.contains("password"));
        if (!secret && (names.contains("id") || names.contains("version"))) {
            String same = Digest.sha256(String.join(
                    "\n",
                    request.getMethod(),
                    request.getUriInfo().getRequestUri().getRawPath(),
                    String.valueOf(request.getUriInfo().getRequestUri().getRawQuery()),
                    viewer.user().role().name(),
                    String.valueOf(request.getHeaderString(HttpHeaders.ACCEPT)),
                    Digest.sha256(body)));
            Optional<Answer> first = keepAnswers.find(viewer.id(), same);
            if (first.isPresent()) {
                request.abortWith(response(first.get()));
            } else {
                request.setProperty(REQUEST, same);
            }
        }
    }

    private static Response response(Answer answer) {
        Response.ResponseBuilder response = Response.status(answer.status());
        if (answer.location() != null) {
            response.location(URI.create(answer.location()));
        }
        if (answer.body() != null) {
            response.type(MediaType.APPLICATION_JSON).entity(answer.body());
        }
        return response.build();
    }

    private static Collection<String> members(byte[] body) {
        try (JsonReader reader = Json.createReader(new ByteArrayInputStream(body))) {
            return reader.read() instanceof JsonValue value && value.getValueType() == JsonValue.ValueType.OBJECT
                    ? value.asJsonObject().keySet()
                    : Set.of();
        } catch (JsonException e) {
            return Set.of();
        }
    }

    private static Collection<String> fields(byte[] body) {
        return Arrays.stream(new String(body, StandardCharsets.UTF_8).split("&"))
                .map(field -> field.replaceFirst("=.*", ""))
                .map(name -> name.contains("%") ? "" : URLDecoder.decode(name, StandardCharsets.UTF_8))
                .collect(Collectors.toSet());
    }

    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) {
        boolean went = response.getStatus() < 400 && origin.hasDone();
        if (went && request.getProperty(REQUEST) instanceof String same) {
            Object entity = response.getEntity();
            if (entity == null || entity instanceof Record && !(entity instanceof Page)) {
                keep(same, new Answer(response.getStatus(), location(response), json(entity)));
            }
        }
    }

    private static @Nullable String json(@Nullable Object entity) {
        return entity == null ? null : JsonWriting.of(entity).toString();
    }

    private static @Nullable String location(ContainerResponseContext response) {
        Object location = response.getHeaders().getFirst(HttpHeaders.LOCATION);
        return location == null ? null : location.toString();
    }

    /** The deed is done and answered for, whether or not its answer can be kept. */
    private void keep(String same, Answer answer) {
        try {
            keepAnswers.keep(viewer.id(), same, answer);
        } catch (RuntimeException e) {
            LOG.log(Level.WARNING, "an answer could not be kept", e);
        }
    }
}
