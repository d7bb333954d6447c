package eaveside.costing;

import eaveside.kernel.ServiceLineId;
import eaveside.offerings.StandardMinutes;

/** Work under a service line, weighed by its standard minutes. */
public record LineWork(ServiceLineId serviceLine, StandardMinutes minutes) {}
