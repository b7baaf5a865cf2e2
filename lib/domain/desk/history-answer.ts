import type { LineFile, Office } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import { sayCount } from "../say/count.ts";
import { dayAt, earlierOf } from "../time/days.ts";
import { onNearDay } from "../time/format-day.ts";
import { type Reply, replyWith } from "./reply.ts";

/** `64 entries, last by D. Okafor today`; the day as it was at the office. */
export function historyAnswer(file: LineFile, report: Report, office: Office | null): Reply {
  const last = file.history.toSorted((one, other) => one.at.localeCompare(other.at)).at(-1);
  if (last === undefined) return replyWith("Nothing yet", []);
  const entries = sayCount(file.history.length, "entry", "entries");
  const day = dayAt(last.at, office?.zone ?? "UTC");
  const when = onNearDay(earlierOf(day, report.today), report.today);
  return replyWith(`${entries}, last by ${shortName(last.by)} ${when}`, []);
}

/** `Dana Okafor` → `D. Okafor`. */
function shortName(name: string): string {
  const words = name.trim().split(/\s+/);
  const last = words.at(-1) ?? "";
  const [first = ""] = words;
  return words.length < 2 ? last : `${[...first][0] ?? ""}. ${last}`;
}
