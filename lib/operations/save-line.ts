import { updateLine } from "#db/queries/line.ts";
import type { LineFacts } from "#lib/domain/facts/line.ts";
import { townWritten } from "#lib/domain/party/address.ts";
import { lineShape } from "#lib/exchange/shape.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine } from "./change.ts";
import { parse } from "./parse.ts";
import { changedOnLine, fieldsSeen } from "./seen.ts";

/** Facts of the line that the office types; the rule is chosen and the line closed elsewhere. */
export type LineFactsTyped = Partial<Omit<LineFacts, "id" | "closedOn" | "authorityId" | "ruleId">>;

const WORDS: Record<keyof LineFactsTyped, string> = {
  name: "name",
  town: "town",
  openedOn: "day of opening",
  upperEnd: "upper end",
  material: "material",
  diameter: "diameter",
  mainStation: "main station",
  mainNote: "note on the main",
  bearing: "bearing",
  bearingFrom: "source of its bearing",
  plumbingCode: "plumbing code",
  leastSlope: "least slope",
  optionId: "way of doing the work",
  statementOthers: "choice of what statements show of the others",
  statementRules: "choice of what statements show of other rules",
  warrantyMonths: "warranty",
  warrantyCovers: "warranty's cover",
  note: "note",
};

const TYPED = Object.keys(WORDS) as (keyof LineFactsTyped)[];

/** These facts as a form was filled in from them, in whatever order they are named. */
export function lineSeen(line: LineFacts, fields: readonly (keyof LineFactsTyped)[]) {
  return fieldsSeen(line, fields.toSorted());
}

/**
 * Saves some or all of the facts about the line itself; those that are not named stay. Refuses where
 * somebody changed one of them since the form was filled in (`seen`: `seenOf(lineSeen(…))`).
 */
export function saveLine(
  act: Act,
  {
    lineId,
    facts,
    seen,
  }: {
    readonly lineId: string;
    readonly facts: LineFactsTyped;
    readonly seen?: string | undefined;
  },
): Result<null, Refusal> {
  return changeLine(act, { lineId, deed: "work-the-file", action: "save-line" }, (file) => {
    const { line } = file;
    const named = TYPED.filter((field) => facts[field] !== undefined);
    const now = lineSeen(line, named);
    const overtaken = changedOnLine(file, seen, { now, about: named });
    if (overtaken !== null) return overtaken;
    const typed = Object.fromEntries(named.map((field) => [field, facts[field]]));
    const parsed = parse(lineShape("memory"), { ...line, ...typed });
    if (!parsed.ok) return parsed;
    const { town } = parsed.value;
    const after: LineFacts = {
      ...parsed.value,
      town: facts.town === undefined ? town : townWritten(town),
    };
    const changed = TYPED.filter((field) => line[field] !== after[field]);
    const pick = (from: LineFacts) =>
      Object.fromEntries(changed.map((field) => [field, from[field]]));
    const names = changed.map((field) => WORDS[field]).join(", ");
    return ok({
      value: null,
      sentence: changed.length === 0 ? null : `Changed the line's ${names}.`,
      detail: { before: pick(line), after: pick(after) },
      write: (db) => updateLine(db, after),
    });
  });
}
