import { and, asc, count, desc, eq, lte, or, sql } from "drizzle-orm";
import { foldText } from "#db/fold-text.ts";
import { gatherWords } from "#db/kept-current.ts";
import type { Db } from "#db/open.ts";
import { preparedOn } from "#db/prepared.ts";
import {
  dueCounts,
  dueThings,
  lineDates,
  lineKeepers,
  lineSummaries,
  lines,
  searchTexts,
  tallies,
} from "#db/schema.ts";
import {
  type DueKind,
  type DueThing,
  type OpenAnswer,
  TALLIES,
  type Tallies,
} from "#lib/domain/desk/answer.ts";
import { type DueCount, EVERYTHING, type Narrowing } from "#lib/domain/desk/narrowing.ts";
import type { LineSummary } from "#lib/domain/desk/summary.ts";
import type { Day } from "#lib/domain/time/day.ts";

/** Sorts after every day: what has none comes last. */
const NO_DAY = "9999";

/** A line as the desk and the lists show it, from its summary. */
export interface SummedLine extends Omit<LineSummary, "closed" | "waiting" | "things" | "dates"> {
  readonly name: string;
  readonly town: string;
  readonly closedOn: string | null;
  readonly open: readonly OpenAnswer[];
  /** It changed, or the day did, since it was summed up: what it says may be out of date. */
  readonly old: boolean;
}

/** A part of a long list. */
export interface Page {
  readonly from: number;
  readonly most: number;
}

/** How often a line's file, or what it rests on, was changed; null where there is no such line. */
export function versionOf(db: Db, lineId: string): number | null {
  const row = preparedOn(db, "version", () =>
    db
      .select({ version: lineSummaries.version })
      .from(lineSummaries)
      .where(eq(lineSummaries.lineId, sql.placeholder("lineId")))
      .prepare(),
  ).get({ lineId });
  return row?.version ?? null;
}

/**
 * Lines whose summary is not of their file as it stands or, where they stand on the desk, not of
 * this day; the most pressing first.
 */
export function oldSummaries(db: Db, day: Day, most: number): string[] {
  const changed = db
    .select({ lineId: lineSummaries.lineId })
    .from(lineSummaries)
    .where(CHANGED)
    .limit(most)
    .all();
  const rest = most - changed.length;
  if (rest <= 0) return changed.map(({ lineId }) => lineId);
  const ofBefore = db
    .select({ lineId: lineSummaries.lineId })
    .from(lineSummaries)
    .where(and(eq(lineSummaries.waiting, true), otherDay(day), eq(lineSummaries.stale, false)))
    .limit(rest)
    .all();
  return [...changed, ...ofBefore].map(({ lineId }) => lineId);
}

/** As the index over them says it. */
const CHANGED = sql`${lineSummaries.stale} = 1`;

/** Other days lie before and after: either side is read from the index. */
function otherDay(day: Day) {
  return or(sql`${lineSummaries.day} < ${day}`, sql`${lineSummaries.day} > ${day}`);
}

/** How many summaries are not of this day or of what changed since. */
export function countOldSummaries(db: Db, day: Day): number {
  const { day: on, stale, waiting } = lineSummaries;
  return (
    preparedOn(db, "old summaries", () =>
      db
        .select({ number: count() })
        .from(lineSummaries)
        .where(
          or(
            CHANGED,
            and(sql`${waiting} = 1`, sql`${on} < ${DAY}`, sql`${stale} = 0`),
            and(sql`${waiting} = 1`, sql`${on} > ${DAY}`, sql`${stale} = 0`),
          ),
        )
        .prepare(),
    ).get({ day })?.number ?? 0
  );
}

const DAY = sql.placeholder("day");

/** Keeps what was summed up from `version` of a line's file on a day. */
export function putSummary(
  db: Db,
  { things, dates, ...summary }: LineSummary,
  { version, day, name }: { readonly version: number; readonly day: Day; readonly name: string },
): void {
  const { lineId, ...facts } = summary;
  db.update(lineSummaries)
    .set({
      ...facts,
      open: [...facts.open],
      day,
      sortName: foldText(name),
      stale: sql`${lineSummaries.version} <> ${version}`,
    })
    .where(eq(lineSummaries.lineId, lineId))
    .run();
  db.delete(dueThings).where(eq(dueThings.lineId, lineId)).run();
  const keeper = keeperOf(db, lineId) ?? "";
  for (const [position, { on, where, ...thing }] of things.entries())
    db.insert(dueThings)
      .values({ ...thing, position, keeper, sortDay: on ?? NO_DAY, path: where ?? null })
      .run();
  db.delete(lineDates).where(eq(lineDates.lineId, lineId)).run();
  for (const [position, date] of dates.entries())
    db.insert(lineDates)
      .values({ lineId, position, ...date })
      .run();
}

/** Who looks after a line, by the user's id; null: nobody. */
export function keeperOf(db: Db, lineId: string): string | null {
  const row = db
    .select({ userId: lineKeepers.userId })
    .from(lineKeepers)
    .where(eq(lineKeepers.lineId, lineId))
    .get();
  return row?.userId ?? null;
}

/** From now on this user looks after the line, or nobody does. */
export function putKeeper(db: Db, lineId: string, userId: string | null): void {
  db.delete(lineKeepers).where(eq(lineKeepers.lineId, lineId)).run();
  if (userId !== null) db.insert(lineKeepers).values({ lineId, userId }).run();
}

/** Nobody looks any more after the lines that this user did. */
export function dropKeeper(db: Db, userId: string): void {
  db.delete(lineKeepers).where(eq(lineKeepers.userId, userId)).run();
}

/** Marks every summary as out of date, so that all are made anew. */
export function forgetSummaries(db: Db): void {
  db.update(lineSummaries).set({ stale: true }).run();
}

/** How many lines are open, closed and on the desk, and how many things of each kind there are. */
export function getTallies(db: Db): Tallies {
  const counted = preparedOn(db, "tallies", () => db.select().from(tallies).prepare()).all();
  const counts = new Map(counted.map(({ name, count: number }) => [name, number]));
  return Object.fromEntries(TALLIES.map((name) => [name, counts.get(name) ?? 0])) as Tallies;
}

/**
 * What is late, due, blocked or waiting over all lines, or over those that the desk is narrowed to:
 * what has a day first, by its day.
 */
export function dueOf(
  db: Db,
  kind: DueKind,
  { from, most, narrowing = EVERYTHING }: Page & { readonly narrowing?: Narrowing },
): (DueThing & Named)[] {
  const { keeper, waitsOn, until } = narrowing;
  const key = `due things ${[keeper, waitsOn, until].map((each) => each !== null)}`;
  return preparedOn(db, key, () => selectDue(db, narrowing))
    .all({ kind, from, most, keeper, waitsOn, until })
    .map(({ sortDay, path, ...thing }) => ({
      ...thing,
      on: sortDay === NO_DAY ? null : sortDay,
      ...(path === null ? {} : { where: path }),
    }));
}

function selectDue(db: Db, { keeper, waitsOn, until }: Narrowing) {
  return db
    .select({
      lineId: dueThings.lineId,
      lineName: lines.name,
      kind: dueThings.kind,
      waitsOn: dueThings.waitsOn,
      sortDay: dueThings.sortDay,
      sentence: dueThings.sentence,
      question: dueThings.question,
      path: dueThings.path,
    })
    .from(dueThings)
    .innerJoin(lines, eq(lines.id, dueThings.lineId))
    .where(
      and(
        eq(dueThings.kind, sql.placeholder("kind")),
        keeper === null ? undefined : eq(dueThings.keeper, sql.placeholder("keeper")),
        waitsOn === null ? undefined : eq(dueThings.waitsOn, sql.placeholder("waitsOn")),
        until === null ? undefined : lte(dueThings.sortDay, sql.placeholder("until")),
      ),
    )
    .orderBy(asc(dueThings.sortDay), asc(dueThings.sentence))
    .limit(MOST)
    .offset(FROM)
    .prepare();
}

/** How many things there are by all that a desk can be narrowed to; `until` ends what is soon. */
export function countDue(db: Db, until: Day): DueCount[] {
  return preparedOn(db, "due counts", () => {
    const soon = sql<number>`${dueCounts.sortDay} <= ${sql.placeholder("until")}`;
    return db
      .select({
        keeper: dueCounts.keeper,
        waitsOn: dueCounts.waitsOn,
        kind: dueCounts.kind,
        soon: soon.mapWith(Boolean),
        count: sql<number>`sum(${dueCounts.count})`,
      })
      .from(dueCounts)
      .groupBy(dueCounts.keeper, dueCounts.waitsOn, dueCounts.kind, soon)
      .prepare();
  }).all({ until });
}

/** How many lines on the desk somebody looks after; empty: nobody does. */
export function countKept(db: Db, keeper: string): number {
  const found = db
    .select({ number: count() })
    .from(lineSummaries)
    .where(and(eq(lineSummaries.keeper, keeper), eq(lineSummaries.waiting, true)));
  return found.get()?.number ?? 0;
}

const MOST = sql.placeholder("most");
const FROM = sql.placeholder("from");

interface Named {
  readonly lineName: string;
}

const SUMMED = {
  lineId: lineSummaries.lineId,
  name: lines.name,
  town: lines.town,
  closedOn: lines.closedOn,
  sentence: lineSummaries.sentence,
  question: lineSummaries.question,
  pressing: lineSummaries.pressing,
  open: lineSummaries.open,
  openCount: lineSummaries.openCount,
  stale: lineSummaries.stale,
  day: lineSummaries.day,
  waiting: lineSummaries.waiting,
};

type Listed = "on-the-desk" | "open" | "closed";

/** Lines of the desk, or all that are open or closed: the most pressing first, then by name. */
export function summedLines(
  db: Db,
  which: Listed,
  { day, from, most, keeper = null }: Page & { readonly day: Day; readonly keeper?: string | null },
): SummedLine[] {
  const whose = keeper === null ? "all" : "one keeper's";
  return preparedOn(db, `lines ${which}, ${whose}`, () => selectLines(db, which, keeper))
    .all({ from, most, keeper })
    .map(({ stale, day: on, waiting, ...line }) => ({
      ...line,
      old: stale || (waiting && on !== day),
    }));
}

/** The page is picked in the index alone; only what is on it is read and joined. */
function selectLines(db: Db, which: Listed, keeper: string | null) {
  const order = [desc(lineSummaries.pressing), asc(lineSummaries.sortName)];
  const picked = db
    .select({ lineId: lineSummaries.lineId })
    .from(lineSummaries)
    .where(
      and(
        which === "on-the-desk"
          ? eq(lineSummaries.waiting, true)
          : eq(lineSummaries.closed, which === "closed"),
        keeper === null ? undefined : eq(lineSummaries.keeper, sql.placeholder("keeper")),
      ),
    )
    .orderBy(...order)
    .limit(MOST)
    .offset(FROM)
    .as("picked");
  return db
    .select(SUMMED)
    .from(picked)
    .innerJoin(lineSummaries, eq(lineSummaries.lineId, picked.lineId))
    .innerJoin(lines, eq(lines.id, picked.lineId))
    .orderBy(...order)
    .prepare();
}

/** Gathers the words of search anew from the rows as they stand. */
export function rebuildSearch(db: Db): void {
  db.delete(searchTexts).run();
  for (const statement of gatherWords()) db.run(sql.raw(statement));
}
