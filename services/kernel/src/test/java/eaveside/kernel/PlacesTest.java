package eaveside.kernel;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class PlacesTest {
    @Test
    void each_name_has_its_own_and_a_refusal_takes_none() {
        Places places = new Places();
        assertTrue(places.enters("one", 2) && places.enters("one", 2));
        assertFalse(places.enters("one", 2));
        assertFalse(places.enters("one", 2));
        assertTrue(places.enters("other", 2));
        places.leaves("one");
        assertTrue(places.enters("one", 2));
        assertFalse(places.enters("one", 2));
    }
}
