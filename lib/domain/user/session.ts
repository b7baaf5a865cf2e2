/** A session ends when it was not used for this long … */
export const IDLE_MINUTES = 2 * 60;

/** … and in any case after this long: an office day. */
export const ABSOLUTE_MINUTES = 12 * 60;

/** Wrong passwords for one account within the window before it has to wait. */
export const TRIES_PER_ACCOUNT = 5;

/** Wrong passwords from one network address within the window before it has to wait. */
export const TRIES_PER_ADDRESS = 30;

export const TRIES_WINDOW_MINUTES = 15;
