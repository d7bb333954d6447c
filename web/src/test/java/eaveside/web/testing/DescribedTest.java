package eaveside.web.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;

/** The checker itself: what is as described passes, and each way to differ is told. */
class DescribedTest {
    private static final String ID = "01900000-0000-7000-8000-000000000001";

    private static final Described DESCRIBED = Described.of("""
            {"paths": {
              "/api/brushes": {"get": {
                "parameters": [{"name": "all", "in": "query", "schema": {"type": "boolean"}},
                               {"name": "from", "in": "query", "schema": {"type": "string", "format": "date"}}],
                "responses": {"200": {"content": {"application/json": {"schema": {
                  "type": "array", "items": {"$ref": "#/components/schemas/Brush"}}}}}}}},
              "/api/brushes/worn": {"get": {"responses": {"204": {}}}},
              "/api/brushes/{id}": {"put": {
                "parameters": [{"name": "id", "in": "path", "schema": {"type": "string", "format": "uuid"}}],
                "requestBody": {"content": {"application/json": {"schema": {"$ref": "#/components/schemas/Brush"}}}},
                "responses": {"200": {"content": {"application/json": {"schema": {
                    "anyOf": [{"$ref": "#/components/schemas/Brush"}, {"type": "object", "additionalProperties": {"type": "integer"}}]}}}},
                  "422": {"content": {"application/problem+json": {"schema": {
                    "type": "object", "properties": {"title": {"type": "string"}}, "required": ["title"]}}}}}}}},
             "components": {"schemas": {
               "Brush": {"type": "object", "required": ["name", "length"], "properties": {
                 "name": {"type": "string", "pattern": "^[a-z]+$"},
                 "length": {"type": "integer"},
                 "weight": {"type": "number"},
                 "bristles": {"type": "string", "enum": ["SOFT", "HARD"]},
                 "bought": {"type": "string", "format": "date"},
                 "worn": {"type": "boolean"}}}}}}""");

    private static List<String> sent(String body) {
        return DESCRIBED.check("PUT", "api/brushes/" + ID, 200, body, "{\"name\": \"a\", \"length\": 1}").stream()
                .map(wrong -> wrong.replaceFirst(".*? 200: ", ""))
                .toList();
    }

    private static List<String> read(String path, int status, String answer) {
        return DESCRIBED.check("GET", path, status, null, answer);
    }

    @Test
    void what_is_as_described_passes() {
        assertEquals(List.of(), sent("""
                {"name": "long", "length": 3, "weight": 1.5, "bristles": "SOFT", "bought": "2026-03-31", "worn": false}"""));
        assertEquals(
                List.of(), read("/api/brushes?all=true&from=2026-01-01", 200, "[{\"name\": \"a\", \"length\": 1}]"));
        assertEquals(
                List.of(), read("/api/brushes/worn", 204, ""), "what is written out is meant before what only fits");
        assertEquals(
                List.of(),
                DESCRIBED.check("PUT", "/api/brushes/" + ID, 200, "{\"name\":\"a\",\"length\":1}", "{\"x\": 1}"));
        assertEquals(List.of(), DESCRIBED.check("PUT", "/api/brushes/" + ID, 422, "refused", "{\"title\": \"No\"}"));
    }

    @Test
    void each_difference_is_told() {
        assertEquals(List.of("body.length is missing"), sent("{\"name\": \"a\"}"));
        assertEquals(List.of("body.length is missing"), sent("{\"name\": \"a\", \"length\": null}"));
        assertEquals(
                List.of("body.colour is not described"), sent("{\"name\": \"a\", \"length\": 1, \"colour\": \"red\"}"));
        assertEquals(List.of("body.name is not of type string: 7"), sent("{\"name\": 7, \"length\": 1}"));
        assertEquals(List.of("body.length is not of type integer: 1.5"), sent("{\"name\": \"a\", \"length\": 1.5}"));
        assertEquals(
                List.of("body.worn is not of type boolean: \"no\""),
                sent("{\"name\": \"a\", \"length\": 1, \"worn\": \"no\"}"));
        assertEquals(
                List.of("body.weight is not of type number: \"1\""),
                sent("{\"name\": \"a\", \"length\": 1, \"weight\": \"1\"}"));
        assertEquals(
                List.of("body.bristles is none of [\"SOFT\",\"HARD\"]: \"LONG\""),
                sent("{\"name\": \"a\", \"length\": 1, \"bristles\": \"LONG\"}"));
        assertEquals(List.of("body.name is not like ^[a-z]+$: A"), sent("{\"name\": \"A\", \"length\": 1}"));
        assertEquals(
                List.of("body.bought is no date: soon"),
                sent("{\"name\": \"a\", \"length\": 1, \"bought\": \"soon\"}"));
        assertEquals(List.of("body is not of type object: ARRAY"), sent("[]"));
        assertEquals(List.of("no body was sent"), sent(null));
    }

    @Test
    void answers_are_held_to_their_status() {
        assertEquals(
                List.of("GET /api/brushes 200: answer[0].length is missing"),
                read("api/brushes", 200, "[{\"name\": \"a\"}]"));
        assertEquals(
                List.of("GET /api/brushes 200: answer[0].length is not of type integer: null"),
                read("api/brushes", 200, "[{\"name\": \"a\", \"length\": null}]"),
                "what is absent is left out of an answer");
        assertEquals(List.of("GET /api/brushes 409: the status is not described"), read("api/brushes", 409, "[]"));
        assertEquals(
                List.of("GET /api/brushes 200: the answer is not JSON: <html>"), read("api/brushes", 200, "<html>"));
        assertEquals(
                List.of("GET /api/brushes/worn 204: a body is answered where none is described"),
                read("api/brushes/worn", 204, "{}"));
        assertEquals(
                List.of("PUT /api/brushes/{id} 422: answer.title is missing"),
                DESCRIBED.check("PUT", "api/brushes/" + ID, 422, "{}", "{}"));
    }

    @Test
    void addresses_are_held_to_their_parameters() {
        assertEquals(
                List.of("GET /api/brushes 200: parameter all is not of type boolean: \"perhaps\""),
                read("api/brushes?all=perhaps", 200, "[]"));
        assertEquals(
                List.of("GET /api/brushes 200: parameter from is no date: May"),
                read("api/brushes?from=May", 200, "[]"));
        assertEquals(
                List.of("GET /api/brushes 200: parameter size is not described"),
                read("api/brushes?size=3", 200, "[]"));
        assertEquals(List.of("no such address is described: /api/mops"), read("api/mops", 200, "[]"));
        assertEquals(List.of(), read("api/mops", 404, "{}"), "there is nothing");
        assertEquals(
                List.of("no such operation is described: DELETE /api/brushes"),
                DESCRIBED.check("DELETE", "api/brushes", 204, null, ""));
    }

    @Test
    void a_keyword_that_is_not_checked_is_no_description() {
        Described other = Described.of("""
                {"paths": {"/api/brushes": {"get": {"responses": {"200": {"content": {"application/json": {"schema":
                  {"type": "integer", "minimum": 3}}}}}}}}}""");
        assertThrows(IllegalStateException.class, () -> other.check("GET", "api/brushes", 200, null, "1"));
    }
}
