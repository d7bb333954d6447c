package eaveside.web.security;

import eaveside.access.Site;
import jakarta.servlet.http.HttpServletRequest;

/** Where the browser of a request sees us. */
public final class Sites {
    private Sites() {}

    public static Site of(HttpServletRequest request) {
        return new Site(request.getScheme() + "://" + request.getHeader("Host"));
    }
}
