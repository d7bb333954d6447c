package eaveside.access.internal;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.UUID;

/** Whose request was answered, and which. */
@Embeddable
public record AnswerKey(
        @Column(name = "user_id") UUID userId,
        @Column(name = "request") String request) {}
