/** A calendar day, `2026-11-25`: no time, no zone. */
export type Day = string;

/** A moment in UTC, `2026-11-25T08:00:00.000Z`. */
export type Instant = string;
