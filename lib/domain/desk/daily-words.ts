import type { Clock } from "../findings/clock.ts";
import { sayCount } from "../say/count.ts";
import type { Day } from "../time/day.ts";
import { formatNearDay } from "../time/format-day.ts";
import type { DueThing } from "./answer.ts";

interface NamedThing extends DueThing {
  readonly lineName: string;
}

/** What one person of the office is told in the morning. */
export interface DailyFacts {
  readonly late: readonly NamedThing[];
  readonly due: readonly NamedThing[];
  /** License, bond and insurance, for those who run the office. */
  readonly papers: readonly Clock[];
  /** How the office is reached from outside; null: no link is put into the message. */
  readonly address: string | null;
}

/** So many things of a kind are written out; of the rest the number is said. */
const MOST = 25;

/** The morning's message to one person; null where nothing is late or due, so that none is sent. */
export function dailyWords(
  { late, due, papers, address }: DailyFacts,
  today: Day,
): { readonly subject: string; readonly text: string } | null {
  if (late.length + due.length + papers.length === 0) return null;
  const counts = [
    late.length === 0 ? "" : `${late.length} overdue`,
    due.length === 0 ? "" : `${due.length} due this week`,
    papers.length === 0
      ? ""
      : sayCount(papers.length, "company paper to renew", "company papers to renew"),
  ].filter((each) => each !== "");
  const parts = [
    part("Overdue", late, today),
    part("Due this week", due, today),
    papers.length === 0
      ? ""
      : [
          "Company papers",
          ...papers.map(
            ({ title, on }) =>
              `- ${title}: ${on < today ? "expired" : "expires"} ${formatNearDay(on, today)}`,
          ),
        ].join("\n"),
    address === null ? "" : `The desk: ${new URL("/?whose=mine", address).href}`,
    "Your office’s admin turned on these messages; they can be turned off under Office.",
  ].filter((each) => each !== "");
  return { subject: `Desk: ${counts.join(", ")}`, text: `${parts.join("\n\n")}\n` };
}

function part(title: string, things: readonly NamedThing[], today: Day): string {
  if (things.length === 0) return "";
  const said = things.slice(0, MOST).map(({ on, sentence, lineName }) => {
    const day = on === null ? "" : ` (${formatNearDay(on, today)})`;
    return `- ${lineName}: ${sentence}${sentence.includes(day.slice(2, -1)) ? "" : day}`;
  });
  const rest = things.length - said.length;
  return [title, ...said, ...(rest > 0 ? [`- and ${rest} more`] : [])].join("\n");
}
