package eaveside.inventory;

import eaveside.kernel.Quantity;

/** A location that holds less of an item than its reorder point. */
public record Shortage(StockItem item, Location location, Quantity held, Quantity reorderPoint) {}
