package eaveside.web;

import jakarta.ws.rs.ApplicationPath;
import jakarta.ws.rs.core.Application;

/** Everything the browser and the scripts reach: pages at the root, JSON under {@code /api}. */
@ApplicationPath("/")
public class EavesideApplication extends Application {}
