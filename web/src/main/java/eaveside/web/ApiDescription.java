package eaveside.web;

import java.util.List;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Paths;
import org.eclipse.microprofile.openapi.models.security.SecurityScheme;

/** What {@code /openapi} describes: the interface for scripts, without the pages, and how a script says who it is. */
public class ApiDescription implements OASFilter {
    private static final String TOKEN = "token";

    @Override
    public void filterOpenAPI(OpenAPI api) {
        api.setInfo(OASFactory.createInfo()
                .title("Eaveside")
                .version("1")
                .description(
                        "What the pages do, for scripts. Amounts and quantities are texts, so that no digit is lost;"
                                + " a refusal is a problem of RFC 9457 with the fields that it names."));
        // Wherever it is asked: an address of this machine's own would mislead whoever comes through a proxy.
        api.setServers(List.of(OASFactory.createServer().url("/")));
        Paths forScripts = OASFactory.createPaths();
        api.getPaths().getPathItems().forEach((path, item) -> {
            if (path.startsWith("/api/")) {
                forScripts.addPathItem(path, item);
            }
        });
        api.setPaths(forScripts);
        if (api.getComponents() == null) {
            api.setComponents(OASFactory.createComponents());
        }
        api.getComponents()
                .addSecurityScheme(
                        TOKEN,
                        OASFactory.createSecurityScheme()
                                .type(SecurityScheme.Type.HTTP)
                                .scheme("bearer")
                                .description(
                                        "A token that its owner made on the account page or with the token command"));
        api.setSecurity(List.of(OASFactory.createSecurityRequirement().addScheme(TOKEN)));
    }
}
