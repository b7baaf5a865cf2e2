const MINUTES_A_DAY = 1_440;

/** Minutes since midnight of a time as `09:40`; null where it is none. */
export function minutesOf(time: string): number | null {
  const [whole, hours, minutes] = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(time) ?? [];
  return whole === undefined ? null : Number(hours) * 60 + Number(minutes);
}

/** A time as `09:40` out of minutes since midnight, past midnight too. */
export function timeOf(minutes: number): string {
  const within = ((minutes % MINUTES_A_DAY) + MINUTES_A_DAY) % MINUTES_A_DAY;
  return `${String(Math.floor(within / 60)).padStart(2, "0")}:${String(within % 60).padStart(2, "0")}`;
}

/** A time so many minutes later; empty where there is no time to count from. */
export function laterBy(time: string, minutes: number): string {
  const from = minutesOf(time);
  return from === null ? "" : timeOf(from + minutes);
}

/** A time kept as `16:05`, as an American office writes it: `4:05 PM`, `noon`, `midnight`; empty for none. */
export function formatTime(time: string): string {
  const minutes = minutesOf(time);
  if (minutes === null) return "";
  if (minutes === 0) return "midnight";
  if (minutes === 720) return "noon";
  const hour = Math.floor(minutes / 60);
  return `${hour % 12 || 12}:${String(minutes % 60).padStart(2, "0")} ${hour < 12 ? "AM" : "PM"}`;
}

const NAMED_TIMES: Readonly<Record<string, string>> = { noon: "12:00", midnight: "00:00" };

/**
 * A typed time as it is kept, `16:05`: takes `4:05 pm`, `4 pm`, `4p`, `16:05`, `noon`. Null where it
 * is no time, and for an hour of the half day without am or pm (`4`, `4:05`), which could be either.
 */
export function parseTime(typed: string): string | null {
  const text = typed.trim().toLowerCase();
  const named = NAMED_TIMES[text];
  if (named !== undefined) return named;
  const [whole, hours, minutes = "00", half] =
    /^(\d{1,2})(?::(\d{2}))?\s*(?:([ap])\.?\s*(?:m\.?)?)?$/.exec(text) ?? [];
  if (whole === undefined || hours === undefined || Number(minutes) > 59) return null;
  const hour = hourOf(hours, half, whole.includes(":"));
  return hour === null ? null : `${String(hour).padStart(2, "0")}:${minutes}`;
}

function hourOf(written: string, half: string | undefined, hasMinutes: boolean): number | null {
  const hour = Number(written);
  if (half !== undefined)
    return hour < 1 || hour > 12 ? null : (hour % 12) + (half === "p" ? 12 : 0);
  const is24 = hasMinutes && (written.startsWith("0") || hour > 12 || hour === 0) && hour < 24;
  return is24 ? hour : null;
}
