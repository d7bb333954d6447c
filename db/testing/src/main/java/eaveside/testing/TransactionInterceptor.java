package eaveside.testing;

import jakarta.annotation.Priority;
import jakarta.inject.Inject;
import jakarta.interceptor.AroundInvoke;
import jakarta.interceptor.Interceptor;
import jakarta.interceptor.InvocationContext;
import jakarta.transaction.Transactional;
import java.io.Serializable;

/** What {@code @Transactional} means on the bench: the same as in the server, for the kinds that this project uses. */
@Transactional
@Interceptor
@Priority(Interceptor.Priority.PLATFORM_BEFORE + 200)
public class TransactionInterceptor implements Serializable {
    private static final long serialVersionUID = 1;

    private final transient TransactionScope scope;

    @Inject
    TransactionInterceptor(TransactionScope scope) {
        this.scope = scope;
    }

    @AroundInvoke
    Object run(InvocationContext call) throws Exception {
        Transactional asked = call.getMethod().getAnnotation(Transactional.class);
        if (asked == null) {
            asked = call.getTarget().getClass().getSuperclass().getAnnotation(Transactional.class);
        }
        Transactional.TxType type = asked == null ? Transactional.TxType.REQUIRED : asked.value();
        return switch (type) {
            case REQUIRED -> TransactionScope.isRunning() ? call.proceed() : scope.inNew(call::proceed);
            case REQUIRES_NEW -> scope.inNew(call::proceed);
            case MANDATORY -> {
                if (!TransactionScope.isRunning()) {
                    throw new IllegalStateException(call.getMethod() + " joins a transaction, and none runs");
                }
                yield call.proceed();
            }
            default -> throw new IllegalStateException(type + " is not used in this project");
        };
    }
}
