package eaveside.web.security;

import jakarta.annotation.Priority;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.container.PreMatching;
import jakarta.ws.rs.ext.Provider;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** No request body may be larger than {@value #LIMIT} bytes, whether it says its length or not. */
@Provider
@PreMatching
@Priority(1)
public class BodyLimit implements ContainerRequestFilter {
    /** Room for one photo of eight megabytes and its form. */
    static final long LIMIT = 12_000_000;

    @Override
    public void filter(ContainerRequestContext request) {
        String length = request.getHeaderString("Content-Length");
        if (length != null && length.matches("\\d{1,18}") && Long.parseLong(length) > LIMIT) {
            throw new WebRefusal.TooLarge(LIMIT);
        }
        if (request.hasEntity()) {
            request.setEntityStream(new Limited(request.getEntityStream()));
        }
    }

    private static final class Limited extends FilterInputStream {
        private long left = LIMIT;

        private Limited(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            int b = super.read();
            if (b >= 0) {
                count(1);
            }
            return b;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            int n = super.read(buffer, offset, length);
            if (n > 0) {
                count(n);
            }
            return n;
        }

        private void count(int n) {
            left -= n;
            if (left < 0) {
                throw new WebRefusal.TooLarge(LIMIT);
            }
        }
    }
}
