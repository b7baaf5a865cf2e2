import type { LineFile } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import { formatDay } from "../time/format-day.ts";

/** A day that was set for something that people have to be told of before it comes. */
export function ahead(
  file: LineFile,
  { today }: Report,
  event: "drains-paused" | "work-begins" | "street-closed",
  words: string,
) {
  const days = file.events.filter((each) => each.event === event).map(({ on }) => on);
  const next = days.findLast((on) => on >= today);
  if (next === undefined) return null;
  const before = days.filter((on) => on < today).toSorted();
  return { because: `${words} ${formatDay(next, today)}`, since: before.at(-1) ?? "" };
}
