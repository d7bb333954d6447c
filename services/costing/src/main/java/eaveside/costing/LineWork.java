package eaveside.costing;

import eaveside.catalog.StandardMinutes;
import eaveside.kernel.ServiceLineId;

/** Work under a service line, weighed by its standard minutes. */
public record LineWork(ServiceLineId serviceLine, StandardMinutes minutes) {}
