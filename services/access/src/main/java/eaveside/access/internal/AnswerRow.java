package eaveside.access.internal;

import eaveside.access.Answer;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.jspecify.annotations.Nullable;

/** What a request was answered with; written by SQL, since the same request may do something again. */
@Entity
@Table(name = "kept_answer")
public class AnswerRow {
    @EmbeddedId
    AnswerKey key;

    int status;

    @Nullable
    String location;

    @Nullable
    String body;

    AnswerRow() {}

    public Answer toAnswer() {
        return new Answer(status, location, body);
    }
}
