import { sentDayOf } from "../calendar/happenings.ts";
import type { ClockEvent, ClockRule } from "../facts/clock-rule.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Clock } from "../findings/clock.ts";
import { sayParty } from "../party/say.ts";
import { sayCount } from "../say/count.ts";
import { sayList } from "../say/say-list.ts";
import { formatFullDay } from "../time/format-day.ts";

type Clocked = Pick<LineFile, "authority" | "notices" | "deliveries" | "parties">;

/** The authority's rule that made a clock; null: no rule did. */
export function ruleOf({ authority }: Pick<LineFile, "authority">, clock: Clock): ClockRule | null {
  return authority?.clockRules.find(({ id }) => clock.key.startsWith(`${id}:`)) ?? null;
}

const OF_LETTERS: readonly ClockEvent[] = ["letter-sent", "certified-letter-mailed"];

/**
 * Whether a rule's clock on letters only repeats what the letters themselves ask: each letter of its
 * kind and day asks for a reply by that very day.
 */
export function repeatsReplies(file: Clocked, clock: Clock): boolean {
  const rule = ruleOf(file, clock);
  if (rule === null || rule.meaning !== "due-by" || !OF_LETTERS.includes(rule.event)) return false;
  const kind = file.notices.find(({ id }) => id === clock.subjectId)?.kind;
  const letters = file.notices.filter(
    (notice) => notice.kind === kind && sentDayOf(file, notice) === clock.startedOn,
  );
  return letters.length > 0 && letters.every(({ replyBy }) => replyBy === clock.on);
}

/**
 * Clocks as rows for a person: replies that are due the same day are one, with the rule that says the
 * day; a rule that only repeats them has no row of its own.
 */
export function clockRows(file: Clocked, clocks: readonly Clock[]): Clock[] {
  const groups = new Map<string, Clock[]>();
  for (const clock of clocks.filter((each) => !repeatsReplies(file, each))) {
    const key = clock.key.startsWith("reply:")
      ? ["reply", clock.on, clock.settled].join(" ")
      : clock.key;
    groups.set(key, [...(groups.get(key) ?? []), clock]);
  }
  const rules = clocks.filter((clock) => repeatsReplies(file, clock));
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    if (first === undefined) return [];
    const sent = new Set(group.map(({ startedOn }) => startedOn));
    const rule = first.key.startsWith("reply:")
      ? rules.find(({ on, startedOn }) => on === first.on && sent.has(startedOn))
      : undefined;
    return [rowOf(file, group, { first, rule })];
  });
}

function rowOf(
  file: Clocked,
  group: readonly Clock[],
  { first, rule }: { readonly first: Clock; readonly rule: Clock | undefined },
): Clock {
  const together = group.length === 1 ? first : { ...first, ...repliesOf(file, group, first) };
  if (rule === undefined) return together;
  const title = ruleOf(file, rule)?.title ?? rule.title;
  return {
    ...together,
    sentence: `${together.sentence} ${title}: ${rule.sentence}`,
    citation: rule.citation,
    asOf: rule.asOf,
  };
}

/** So many people are named in a row’s title; more are counted there and named beneath. */
const NAMED = 3;

function repliesOf(
  file: Clocked,
  group: readonly Clock[],
  { on }: Clock,
): Pick<Clock, "title" | "sentence"> {
  const names = group.map(({ subjectId }) => {
    const notice = file.notices.find(({ id }) => id === subjectId);
    return notice === undefined ? "someone" : sayParty(file, notice.partyId);
  });
  const people = [...new Set(names)];
  const days = [...new Set(group.map(({ startedOn }) => startedOn))].toSorted().map(formatFullDay);
  const asked = `${sayCount(group.length, "letter")} of ${sayList(days)} ask for a reply by ${formatFullDay(on)}`;
  if (people.length <= NAMED)
    return { title: `Replies from ${sayList(people)}`, sentence: `${asked}.` };
  return {
    title: `Replies from ${people.length} people`,
    sentence: `${asked}: ${sayList(people)}.`,
  };
}
