package eaveside.inventory;

import eaveside.kernel.Quantity;
import eaveside.kernel.Texts;

/**
 * How an item is bought: a canister, a case of four. A liquid bought by weight is a pack of the volume on its label.
 *
 * @param  content how much of the item one pack holds, in its base unit or one like it; above zero
 */
public record Pack(String name, Quantity content) {
    public Pack {
        name = Texts.required("name", name, 100);
        Limits.positive("content", content);
    }
}
