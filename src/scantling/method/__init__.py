"""Order of work, gauges, before-glue list, glue-ups, calendar."""
