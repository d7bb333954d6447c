package eaveside.web.forms;

import eaveside.web.security.Viewer;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Form;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.UriInfo;
import jakarta.ws.rs.ext.MessageBodyReader;
import jakarta.ws.rs.ext.Provider;
import jakarta.ws.rs.ext.Providers;
import java.io.IOException;
import java.io.InputStream;
import java.lang.annotation.Annotation;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;

/** Gives resources what a browser sent as a {@link eaveside.web.forms.Form} of their record, or as plain {@link Fields}. */
@Provider
@Singleton
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
public class FormReader implements MessageBodyReader<Object> {
    @Inject
    Viewer viewer;

    @Context
    Providers providers;

    @Context
    UriInfo uri;

    @Override
    public boolean isReadable(Class<?> type, Type genericType, Annotation[] annotations, MediaType mediaType) {
        return type == eaveside.web.forms.Form.class || type == Fields.class;
    }

    @Override
    public Object readFrom(
            Class<Object> type,
            Type genericType,
            Annotation[] annotations,
            MediaType mediaType,
            MultivaluedMap<String, String> headers,
            InputStream body)
            throws IOException {
        MultivaluedMap<String, String> typed = providers
                .getMessageBodyReader(Form.class, Form.class, annotations, mediaType)
                .readFrom(Form.class, Form.class, annotations, mediaType, headers, body)
                .asMap();
        Fields fields = viewer.fields(typed);
        if ((Class<?>) type == Fields.class) {
            return fields;
        }
        Class<?> record = (Class<?>) ((ParameterizedType) genericType).getActualTypeArguments()[0];
        var form = eaveside.web.forms.Form.sent(record, fields);
        Given.of(form.shape(), uri, viewer).forEach(form::given);
        return form;
    }
}
