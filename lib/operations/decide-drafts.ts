import { updateRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { DraftDecision, Narration } from "#lib/domain/facts/narration.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import type { Gap, Observation } from "#lib/domain/facts/run.ts";
import type { Draft, DraftGap, DraftLog } from "#lib/domain/narration/log/draft.ts";
import {
  draftedFields,
  draftedGap,
  logOf,
  readingOf,
} from "#lib/domain/narration/log/narration-log.ts";
import { nonsenseIn } from "#lib/domain/report/sense.ts";
import { ROW_SHAPES } from "#lib/exchange/rows.ts";
import { err, ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { writeTables } from "./row-writes.ts";
import { followSightings } from "./sightings.ts";

/** A draft that a person takes, with the fields that the person mended. */
export interface Accepted {
  readonly key: string;
  readonly fields: Readonly<Record<string, unknown>>;
  /** Its counter was worked out anew around a distance that the person mended. */
  readonly moved?: boolean;
}

interface Decisions {
  readonly lineId: string;
  readonly narrationId: string;
  readonly accept: readonly Accepted[];
  readonly drop: readonly string[];
}

interface Made {
  readonly observations: readonly Observation[];
  readonly gaps: readonly Gap[];
  readonly decided: readonly DraftDecision[];
}

const TABLES = ["observations", "gaps", "tieIns"] as const;

/**
 * Makes observations and gaps of drafts, as a person mended them, and notes which were dropped; all
 * of it or nothing. The words said, their time and how the counter was found stay with each. A
 * refusal's path is the draft's key and the field: `k1.counter`.
 */
export function decideDrafts(
  act: Act,
  { lineId, narrationId, accept, drop }: Decisions,
): Result<{ accepted: number; dropped: number }, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "decide-drafts" } as const;
  return changeLine(act, deal, (file) => {
    const narration = find(file.narrations, narrationId, {
      path: "narrationId",
      what: "the transcript",
    });
    if (!narration.ok) return narration;
    const log = logOf(file, narration.value);
    const other = fromOtherEnd(file, narration.value, { log, accept });
    if (other !== null) return other;
    const open = stillOpen(log, narration.value, [...accept.map(({ key }) => key), ...drop]);
    if (!open.ok) return open;
    const made = makeAll(act, { log, narration: narration.value, accept });
    if (!made.ok) return made;
    const { observations, gaps } = made.value;
    const after = withMade(act, file, made.value);
    const senseless = senselessIn(after, made.value);
    if (senseless !== null) return senseless;
    const dropped = drop.map((key) => ({ key, state: "dropped", observationId: null }) as const);
    const row: Narration = {
      ...narration.value,
      decided: [...narration.value.decided, ...made.value.decided, ...dropped],
    };
    return ok({
      value: { accepted: accept.length, dropped: drop.length },
      sentence: sentenceOf(after, narration.value, made.value, drop.length),
      detail: { narrationId, observations, gaps, dropped: quotesOf(log, drop) },
      write: (db) => {
        writeTables({ ...act, db }, { before: file, after, tables: TABLES });
        updateRow(db, "narrations", { lineId, row });
      },
    });
  });
}

/** Footages from the main mean nothing on a run that counts from its way in: that has to be said first. */
function fromOtherEnd(
  { runs }: Pick<LineFile, "runs">,
  { runId }: Narration,
  { log, accept }: { log: DraftLog; accept: readonly Accepted[] },
) {
  const run = runs.find(({ id }) => id === runId);
  const [first] = accept;
  if (first === undefined || run === undefined || log.measuredFrom === run.measuredFrom)
    return null;
  const said =
    log.measuredFrom === "main"
      ? `the narration is measured from the main, and ${run.name} from the access point. First set ${run.name} to be measured from the main`
      : `the narration is measured from the access point, and ${run.name} from the main. First change what ${run.name} is measured from`;
  return refuse("bad-value", `${first.key}.counter`, said);
}

/** Every key is a draft of this text that nobody has decided on yet. */
function stillOpen(
  log: DraftLog,
  { decided }: Narration,
  keys: readonly string[],
): Result<null, Refusal> {
  const drafted = new Set([...log.drafts, ...log.gaps].map(({ key }) => key));
  const closed = new Set(decided.map(({ key }) => key));
  for (const key of keys) {
    if (!drafted.has(key)) return refuse("not-found", key, "one of these rows");
    if (closed.has(key))
      return refuse("changed-meanwhile", key, "one of these rows was already reviewed");
    closed.add(key);
  }
  return ok(null);
}

function makeAll(
  act: Act,
  { log, narration, accept }: { log: DraftLog; narration: Narration; accept: readonly Accepted[] },
): Result<Made, Refusal> {
  const fieldsOf = new Map(accept.map(({ key, fields }) => [key, fields]));
  const moved = new Set(accept.flatMap((each) => (each.moved === true ? [each.key] : [])));
  const observations: Observation[] = [];
  const gaps: Gap[] = [];
  const decided: DraftDecision[] = [];
  for (const draft of log.drafts) {
    const fields = fieldsOf.get(draft.key);
    if (fields === undefined) continue;
    const seen = seenOf(act, narration, draft, { fields, moved: moved.has(draft.key) });
    if (!seen.ok) return seen;
    observations.push(seen.value);
    decided.push({ key: draft.key, state: "accepted", observationId: seen.value.id });
  }
  for (const draft of log.gaps) {
    const fields = fieldsOf.get(draft.key);
    if (fields === undefined) continue;
    const gap = gapOf(act, narration, draft, fields);
    if (!gap.ok) return gap;
    gaps.push(gap.value);
    decided.push({ key: draft.key, state: "accepted", observationId: gap.value.id });
  }
  return ok({ observations, gaps, decided });
}

/**
 * The person's fields over the drafted ones. A counter that was corrected counts as read; one that
 * moved along with another that was corrected is still worked out.
 */
function seenOf(
  act: Act,
  { runId }: Narration,
  draft: Draft,
  { fields, moved }: { readonly fields: Accepted["fields"]; readonly moved: boolean },
): Result<Observation, Refusal> {
  const drafted = draftedFields(draft);
  const mended = mendedFields(drafted, fields);
  const workedOut = moved && draft.reading !== "read";
  const isAsSaid = workedOut || mended["counter"] === draft.counter;
  const reading = isAsSaid ? readingOf(draft) : "read";
  const uncertainty = fields["uncertainty"] ?? (isAsSaid ? drafted.uncertainty : null);
  const own = { quote: draft.quote, reading, uncertainty, tieInId: null, id: act.newId(), runId };
  const parsed = ROW_SHAPES.observations.safeParse({ ...drafted, ...mended, ...own });
  return parsed.success ? ok(parsed.data) : err(refusalAt(draft.key, parsed.error.issues[0]));
}

function gapOf(
  act: Act,
  { runId }: Narration,
  draft: DraftGap,
  fields: Accepted["fields"],
): Result<Gap, Refusal> {
  const drafted = draftedGap(draft);
  const row = { ...drafted, ...mendedFields(drafted, fields), id: act.newId(), runId };
  const parsed = ROW_SHAPES.gaps.safeParse(row);
  return parsed.success ? ok(parsed.data) : err(refusalAt(draft.key, parsed.error.issues[0]));
}

/** Of what was sent, only the fields that a draft has. */
function mendedFields(drafted: object, fields: Accepted["fields"]): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries({ ...drafted, ...fields }).filter(([field]) => field in drafted),
  );
}

function refusalAt(
  key: string,
  issue: { readonly path: readonly PropertyKey[]; readonly message: string } | undefined,
): Refusal {
  const field = String(issue?.path[0] ?? "");
  return { reason: "bad-value", path: `${key}.${field}`, detail: issue?.message ?? "" };
}

function withMade(act: Act, file: LineFile, { observations, gaps }: Made): LineFile {
  const after = {
    ...file,
    observations: observations.reduce(inTime, file.observations),
    gaps: [...file.gaps, ...gaps],
  };
  return followSightings(act, after, { table: "observations", before: file });
}

/**
 * Among what its run saw, where its time puts it, so that a log that is accepted in several goes reads
 * as it was told; at the end where nothing has a time.
 */
function inTime(log: readonly Observation[], seen: Observation): readonly Observation[] {
  const { runId, videoSecond: time } = seen;
  if (time === null) return [...log, seen];
  const timed = (each: Observation) => (each.runId === runId ? each.videoSecond : null);
  const before = log.findLastIndex((each) => (timed(each) ?? Number.MAX_SAFE_INTEGER) <= time);
  const after = log.findIndex((each) => (timed(each) ?? -1) > time);
  const at = before === -1 ? after : before + 1;
  return at === -1 ? [...log, seen] : log.toSpliced(at, 0, seen);
}

function senselessIn(after: LineFile, { decided }: Made) {
  const [first] = nonsenseIn(after);
  if (first === undefined) return null;
  const row = (after[first.list] as readonly { readonly id: string }[])[first.row];
  const key = decided.find(({ observationId }) => observationId === row?.id)?.key ?? "";
  return refuse("bad-value", `${key}.${first.path}`, first.message);
}

function sentenceOf(
  after: LineFile,
  { runId }: Narration,
  { observations, gaps }: Made,
  dropped: number,
): string | null {
  const names = [
    ...observations.map(({ id }) => nameRow(after, "observations", id)),
    ...gaps.map(({ id }) => nameRow(after, "gaps", id)),
  ];
  const run = nameRow(after, "runs", runId);
  const some = names.slice(0, 3).join(", ");
  const more = names.length > 3 ? ` and ${names.length - 3} more` : "";
  const taken = names.length === 0 ? "" : `Accepted from the narration of ${run}: ${some}${more}.`;
  const left = dropped === 0 ? "" : `Discarded ${dropped} of the rows drafted for ${run}.`;
  const said = `${taken} ${left}`.trim();
  return said === "" ? null : said;
}

function quotesOf(log: DraftLog, keys: readonly string[]): string[] {
  return [...log.drafts, ...log.gaps]
    .filter(({ key }) => keys.includes(key))
    .map(({ quote }) => quote);
}
