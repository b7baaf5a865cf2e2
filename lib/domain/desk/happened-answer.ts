import type { Day } from "../calendar/day.ts";
import { isDay } from "../calendar/days.ts";
import { onNearDay } from "../calendar/format-day.ts";
import type { LineFile } from "../file/line-file.ts";
import type { Report } from "../file/report.ts";
import { type Reply, replyWith } from "./reply.ts";
import { sayCount } from "./say.ts";

/** `64 entries, last by D. Okafor today`. */
export function happenedAnswer(file: LineFile, report: Report): Reply {
  const last = file.history.toSorted((one, other) => one.at.localeCompare(other.at)).at(-1);
  if (last === undefined) return replyWith("Nothing yet", []);
  const when = dayWords(last.at.slice(0, 10), report.today);
  const entries = sayCount(file.history.length, "entry", "entries");
  return replyWith(`${entries}, last by ${shortName(last.by)} ${when}`.trim(), []);
}

/** An evening of the office can be a day ahead in UTC; nothing happened after today. */
function dayWords(day: Day, today: Day): string {
  if (!isDay(day)) return "";
  return onNearDay(day > today ? today : day, today);
}

/** `Dana Okafor` → `D. Okafor`. */
function shortName(name: string): string {
  const words = name.trim().split(/\s+/);
  const last = words.at(-1) ?? "";
  const [first = ""] = words;
  return words.length < 2 ? last : `${[...first][0] ?? ""}. ${last}`;
}
