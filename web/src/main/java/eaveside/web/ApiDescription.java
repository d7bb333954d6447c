package eaveside.web;

import eaveside.customers.Duplicate;
import eaveside.customers.ImportReport.BadRow;
import eaveside.customers.ImportReport.DuplicateRow;
import eaveside.kernel.Versioned;
import eaveside.pricing.PriceBookDraft;
import eaveside.pricing.PublishPriceBook;
import eaveside.pricing.QuoteChange;
import eaveside.pricing.QuoteRevision;
import eaveside.visits.ScopeChange;
import eaveside.visits.VisitEdit;
import eaveside.visits.VisitState;
import eaveside.web.forms.Schemas;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.Components;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.Paths;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;
import org.eclipse.microprofile.openapi.models.responses.APIResponses;
import org.eclipse.microprofile.openapi.models.security.SecurityScheme;

/**
 * What {@code /openapi} describes: the interface for scripts, without the pages, and how a script says who it is. The
 * platform would describe Java types as its own binding writes them; here bodies and answers are read and written by the
 * shapes of records, so the description is made from those.
 */
public class ApiDescription implements OASFilter {
    private static final String TOKEN = "token";
    private static final String JSON = "application/json";
    private static final String PROBLEM_JSON = "application/problem+json";
    private static final String PROBLEM = "Problem";
    private static final String FAULT = "Fault";

    /** What is stored where what is sent is a change of it, and no version of it. */
    private static final Map<Class<?>, List<Class<?>>> CHANGED = Map.of(
            QuoteChange.class, List.of(QuoteRevision.class),
            PublishPriceBook.Publish.class, List.of(PriceBookDraft.class),
            VisitEdit.class, List.of(VisitState.class, ScopeChange.class));

    /** What every problem says. */
    private static final List<String> ALWAYS = List.of("type", "title", "status", "fields");

    private static final Map<Integer, String> REFUSALS = Map.of(
            400, "The request cannot be read; 'fields' are the members and parameters that are wrong",
            401, "No token, or one that is not valid",
            403, "Not open to the user's role",
            404, "Something that the request names is not there",
            409, "It is another than what is stored, or what is stored has changed",
            413, "The body is too large",
            415, "The body is of another media type",
            422, "A rule of the business is against it; 'fields' are what it is about");

    @Override
    public void filterOpenAPI(OpenAPI api) {
        api.setInfo(OASFactory.createInfo()
                .title("Eaveside")
                .version("1")
                .description(
                        "What the pages do, for scripts. Amounts and quantities are texts, so that no digit is lost;"
                                + " what is absent is left out of an answer, and a member of a body that is null counts as left"
                                + " out; a refusal is a problem of RFC 9457 with the fields that it names."));
        // Wherever it is asked: an address of this machine's own would mislead whoever comes through a proxy.
        api.setServers(List.of(OASFactory.createServer().url("/")));
        List<ApiOperation> operations = ApiResources.operations();
        Schemas schemas = schemas(operations);
        Paths paths = OASFactory.createPaths();
        Set<String> tags = new LinkedHashSet<>();
        for (ApiOperation operation : operations) {
            PathItem item = paths.getPathItem(operation.path());
            if (item == null) {
                item = OASFactory.createPathItem();
                paths.addPathItem(operation.path(), item);
            }
            Operation described = described(operation, schemas);
            item.setOperation(PathItem.HttpMethod.valueOf(operation.verb()), described);
            tags.addAll(described.getTags());
        }
        api.setPaths(paths);
        api.setTags(new ArrayList<>(
                tags.stream().map(tag -> OASFactory.createTag().name(tag)).toList()));
        api.setComponents(components(schemas));
        api.setSecurity(List.of(OASFactory.createSecurityRequirement().addScheme(TOKEN)));
    }

    private static Schemas schemas(List<ApiOperation> operations) {
        List<Type> sent = new ArrayList<>();
        List<Type> answered = new ArrayList<>(List.of(Duplicate.class, BadRow.class, DuplicateRow.class));
        for (ApiOperation operation : operations) {
            Class<?> body = operation.body();
            if (body != null) {
                sent.add(body);
                if (isVersioned(body)) {
                    answered.add(body);
                    answered.addAll(stored(body));
                }
            }
            answered.addAll(operation.answers());
        }
        return new Schemas(sent, answered);
    }

    /** Whether a conflict tells both versions of what was sent. */
    private static boolean isVersioned(Class<?> body) {
        return Versioned.class.isAssignableFrom(body);
    }

    private static List<Class<?>> stored(Class<?> body) {
        return CHANGED.entrySet().stream()
                .filter(change -> change.getKey().isAssignableFrom(body))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse(List.of(body));
    }

    private static Operation described(ApiOperation operation, Schemas schemas) {
        Operation described = OASFactory.createOperation().operationId(operation.id());
        var says = operation.says(org.eclipse.microprofile.openapi.annotations.Operation.class);
        if (says != null) {
            described.summary(says.summary());
            if (!says.description().isEmpty()) {
                described.description(says.description());
            }
        }
        var tag = operation.says(org.eclipse.microprofile.openapi.annotations.tags.Tag.class);
        described.setTags(tag == null ? List.of() : List.of(tag.name()));
        for (ApiOperation.Said said : operation.parameters()) {
            described.addParameter(OASFactory.createParameter()
                    .name(said.name())
                    .in(said.inPath() ? Parameter.In.PATH : Parameter.In.QUERY)
                    .required(said.required())
                    .schema(model(said.schema())));
        }
        if (operation.hasBody()) {
            Class<?> body = operation.body();
            described.setRequestBody(OASFactory.createRequestBody()
                    .required(true)
                    .content(content(
                            operation.takes(),
                            body == null ? Map.of("type", "string") : schemas.sent(body, operation.given()))));
        }
        described.setResponses(responses(operation, schemas));
        return described;
    }

    private static APIResponses responses(ApiOperation operation, Schemas schemas) {
        APIResponses responses = OASFactory.createAPIResponses();
        responses.addAPIResponse(String.valueOf(operation.success()), success(operation, schemas));
        for (int status : operation.refusals()) {
            String description = status == 403
                    ? REFUSALS.get(403) + "; it is open to "
                            + String.join(", ", operation.roles()).toLowerCase(Locale.ROOT)
                    : String.valueOf(REFUSALS.get(status));
            Class<?> body = operation.body();
            Map<String, Object> schema = status == 409 && body != null && isVersioned(body)
                    ? conflict(body, schemas)
                    : Schemas.reference(PROBLEM);
            responses.addAPIResponse(String.valueOf(status), problem(description, schema));
        }
        return responses.addAPIResponse(
                "500", problem("A fault; the server's log has it under the id", Schemas.reference(FAULT)));
    }

    private static APIResponse problem(String description, Map<String, Object> schema) {
        return OASFactory.createAPIResponse().description(description).content(content(PROBLEM_JSON, schema));
    }

    private static APIResponse success(ApiOperation operation, Schemas schemas) {
        List<Map<String, Object>> answers =
                operation.answers().stream().map(schemas::answered).toList();
        APIResponse success = OASFactory.createAPIResponse()
                .description(
                        switch (operation.success()) {
                            case 201 -> "Made, or made before by the same request; Location is its address";
                            case 204 -> "Done; nothing is answered";
                            default -> "Done";
                        });
        if (!answers.isEmpty()) {
            success.content(content(JSON, Schemas.oneOf(answers)));
        }
        if (operation.success() == 201) {
            success.addHeader(
                    "Location",
                    OASFactory.createHeader().required(true).schema(model(Map.of("type", "string", "format", "uri"))));
        }
        return success;
    }

    /** A problem that tells what is stored beside what was sent, where another user changed it first. */
    private static Map<String, Object> conflict(Class<?> record, Schemas schemas) {
        Map<String, Object> members = problemMembers(schemas);
        members.put(
                "stored",
                Schemas.oneOf(stored(record).stream().map(schemas::answered).toList()));
        members.put("sent", schemas.answered(record));
        return schemas.component(schemas.nameOf(record) + "Conflict", Schemas.object(members, ALWAYS));
    }

    private static Map<String, Object> problemMembers(Schemas schemas) {
        Map<String, Object> members = new LinkedHashMap<>();
        members.put("type", Map.of("type", "string", "pattern", "^urn:eaveside:refusal:"));
        members.put("title", Map.of("type", "string"));
        members.put("status", Map.of("type", "integer"));
        members.put("fields", Schemas.array(Map.of("type", "string")));
        // Of a customer who may be here already, and of a file of customers.
        members.put("duplicates", Schemas.array(schemas.answered(Duplicate.class)));
        members.put("rows", Map.of("type", "integer"));
        members.put("badRows", Schemas.array(schemas.answered(BadRow.class)));
        members.put("duplicateRows", Schemas.array(schemas.answered(DuplicateRow.class)));
        return members;
    }

    private static Map<String, Object> fault() {
        Map<String, Object> members = new LinkedHashMap<>();
        members.put("type", Map.of("type", "string"));
        members.put("title", Map.of("type", "string"));
        members.put("status", Map.of("type", "integer"));
        members.put("correlationId", Map.of("type", "string", "format", "uuid"));
        return Schemas.object(members, List.copyOf(members.keySet()));
    }

    private static Components components(Schemas schemas) {
        schemas.component(PROBLEM, Schemas.object(problemMembers(schemas), ALWAYS));
        schemas.component(FAULT, fault());
        Components components = OASFactory.createComponents()
                .addSecurityScheme(
                        TOKEN,
                        OASFactory.createSecurityScheme()
                                .type(SecurityScheme.Type.HTTP)
                                .scheme("bearer")
                                .description(
                                        "A token that its owner made on the account page or with the token command"));
        schemas.components().forEach((name, schema) -> components.addSchema(name, model(schema)));
        return components;
    }

    private static Content content(String type, Map<String, Object> schema) {
        return OASFactory.createContent()
                .addMediaType(type, OASFactory.createMediaType().schema(model(schema)));
    }

    /** A schema as the platform holds one. */
    @SuppressWarnings("unchecked")
    private static Schema model(Map<String, Object> json) {
        Schema schema = OASFactory.createSchema();
        json.forEach((key, value) -> {
            switch (key) {
                case "$ref" -> schema.setRef((String) value);
                case "type" -> schema.setType(Schema.SchemaType.valueOf(((String) value).toUpperCase(Locale.ROOT)));
                case "format" -> schema.setFormat((String) value);
                case "pattern" -> schema.setPattern((String) value);
                case "enum" -> schema.setEnumeration(new ArrayList<>((List<Object>) value));
                case "default" -> schema.setDefaultValue(value);
                case "items" -> schema.setItems(model((Map<String, Object>) value));
                case "required" -> schema.setRequired(new ArrayList<>((List<String>) value));
                case "properties" ->
                    ((Map<String, Map<String, Object>>) value)
                            .forEach((name, part) -> schema.addProperty(name, model(part)));
                case "anyOf" -> ((List<Map<String, Object>>) value).forEach(part -> schema.addAnyOf(model(part)));
                case "additionalProperties" -> {
                    if (value instanceof Boolean allowed) {
                        schema.setAdditionalPropertiesBoolean(allowed);
                    } else {
                        schema.setAdditionalPropertiesSchema(model((Map<String, Object>) value));
                    }
                }
                default -> throw new IllegalStateException("no part of a schema here: " + key);
            }
        });
        return schema;
    }
}
