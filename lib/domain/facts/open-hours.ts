export const OPEN_DAYS = ["every-day", "monday-to-friday", "monday-to-saturday"] as const;
export type OpenDays = (typeof OPEN_DAYS)[number];

/** When a phone is answered, each week alike. */
export interface OpenHours {
  readonly days: OpenDays;
  /** Local times as `08:00`; both empty: at every hour of these days. */
  readonly from: string;
  readonly to: string;
}

/** Whether the phone is answered day and night. */
export function isRoundTheClock({ days, from, to }: OpenHours): boolean {
  return days === "every-day" && from === "" && to === "";
}
