package eaveside.web.tasks;

import eaveside.kernel.Refusal;

/** Why a task of the command line is not done, told to the person at the terminal. */
final class TaskRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    TaskRefusal(Type type, String message) {
        super(type, message);
    }
}
