package eaveside.web.tasks;

import eaveside.kernel.Refusal;

/** Why a task of the command line is not done. */
abstract sealed class TaskRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private TaskRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    static final class Unknown extends TaskRefusal {
        private static final long serialVersionUID = 1;

        Unknown(String task) {
            super(Type.MALFORMED, "There is no task " + task, "task");
        }
    }

    static final class Missing extends TaskRefusal {
        private static final long serialVersionUID = 1;

        Missing(String field) {
            super(Type.MALFORMED, "Nothing was given for " + field, field);
        }
    }

    static final class HasUsers extends TaskRefusal {
        private static final long serialVersionUID = 1;

        HasUsers() {
            super(Type.CONFLICT, "This company has users already; an owner adds further ones");
        }
    }
}
