package eaveside.web;

import eaveside.web.security.Viewer;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.Utf8ByteOutput;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.ext.MessageBodyWriter;
import jakarta.ws.rs.ext.Provider;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;
import java.util.Map;

/** Renders a {@link Page} by its template, which was compiled with the application. */
@Provider
@ApplicationScoped
@Produces(MediaType.TEXT_HTML)
public class PageWriter implements MessageBodyWriter<Page> {

    private static final TemplateEngine TEMPLATES = TemplateEngine.createPrecompiled(
            null, ContentType.Html, PageWriter.class.getClassLoader(), "eaveside.web.templates");

    static {
        TEMPLATES.setBinaryStaticContent(true);
    }

    @Inject
    Viewer viewer;

    @Override
    public boolean isWriteable(Class<?> type, Type genericType, Annotation[] annotations, MediaType mediaType) {
        return Page.class.isAssignableFrom(type);
    }

    @Override
    public void writeTo(
            Page page,
            Class<?> type,
            Type genericType,
            Annotation[] annotations,
            MediaType mediaType,
            MultivaluedMap<String, Object> headers,
            OutputStream body)
            throws IOException {
        // Rendered whole before the first byte leaves: a template that fails becomes an error page, not half a page.
        var output = new Utf8ByteOutput();
        TEMPLATES.render(
                page.template(),
                Map.of("page", page, "view", page instanceof PagePart ? viewer.view() : viewer.page()),
                output);
        headers.putSingle(HttpHeaders.CONTENT_TYPE, "text/html;charset=UTF-8");
        headers.putSingle(HttpHeaders.CONTENT_LENGTH, output.getContentLength());
        output.writeTo(body);
    }
}
