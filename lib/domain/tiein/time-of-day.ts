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
