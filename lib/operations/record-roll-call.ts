import { insertRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import {
  ROLL_CALL_ANSWERS,
  type RollCallAnswer,
  type RollCallMatter,
  type RollCallWord,
} from "#lib/domain/facts/roll-call.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { sayProperty } from "#lib/domain/party/say.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { type Door, rollCallsOf } from "#lib/domain/rollcall/roll-call.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

interface DoorWord {
  readonly lineId: string;
  readonly matter: RollCallMatter;
  /** Id of the event that drains are paused. */
  readonly pauseId: string;
  readonly propertyId: string;
  readonly unitId: string | null;
  readonly answer: RollCallAnswer;
  readonly spokeWith: string;
  readonly words: string;
  /** Who called or knocked; a waiver is given by whoever is signed in. */
  readonly by: string;
  /** The day and hours that were spoken of, as the page showed them: `2026-12-02 08:00 12:00`. */
  readonly about: string;
  /** Id of the door's latest word as the person saw it; empty: there was none. */
  readonly seen: string;
}

/** The day and hours of a pause, to be told apart from others: `2026-12-02 08:00 12:00`. */
export function pauseKey({ on, at, until }: { on: string; at: string; until: string }): string {
  return [on, at, until].join(" ");
}

/**
 * Records what came of one door in a roll-call: who answered, what they said, who called and when.
 * Words are added, never changed; the latest one of a door counts. Refuses a pause that is over or
 * whose hours were moved since, a door that is not asked, a word on top of one that somebody else
 * recorded meanwhile, help or a waiver without its words, and a waiver by the field.
 */
export function recordRollCall(
  act: Act,
  { lineId, ...said }: DoorWord,
): Result<{ wordId: string }, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "record-roll-call" } as const;
  return changeLine(act, deal, (file) => {
    const call = rollCallsOf(file, reportOn(file, act.today)).find(
      ({ matter, pause }) => matter === said.matter && pause.id === said.pauseId,
    );
    if (call === undefined) return refuse("not-found", "", "the drain shutdown");
    const { pause } = call;
    if (pauseKey(pause) !== said.about)
      return refuse("changed-meanwhile", "", "the day or hours of the shutdown");
    const door = call.doors.find(
      ({ propertyId, unitId }) => propertyId === said.propertyId && unitId === said.unitId,
    );
    if (door === undefined) return refuse("not-found", "", "this door");
    if ((door.word?.id ?? "") !== said.seen)
      return refuse("changed-meanwhile", "", door.word?.by ?? "");
    const wrong = wrongWord(act, said);
    if (wrong !== null) return wrong;
    const word: RollCallWord = {
      id: act.newId(),
      matter: said.matter,
      forDay: pause.on,
      from: pause.at,
      until: pause.until,
      propertyId: door.propertyId,
      unitId: door.unitId,
      answer: said.answer,
      spokeWith: said.spokeWith.trim(),
      words: said.words.trim(),
      by: said.answer === "waived" ? act.actor.name : said.by.trim(),
      at: act.now,
    };
    return ok({
      value: { wordId: word.id },
      sentence: sentenceOf(file, door, word),
      detail: { after: word },
      write: (db) => insertRow(db, "rollCall", { lineId, row: word }),
    });
  });
}

function wrongWord(act: Act, { matter, answer, words, by }: Omit<DoorWord, "lineId">) {
  if (!ROLL_CALL_ANSWERS.includes(answer) || (matter === "drains-on" && answer === "agreed"))
    return refuse("bad-value", "answer", "Choose what they said");
  if (answer === "waived" && !mayDo(act.actor.role, "work-the-file")) return refuse("not-allowed");
  if (answer === "waived" && words.trim() === "")
    return refuse("missing-value", "words", "Enter why it can go ahead without reaching them");
  if (answer === "needs-help" && words.trim() === "")
    return refuse("missing-value", "words", "Enter what help they need");
  if (answer !== "waived" && by.trim() === "")
    return refuse("missing-value", "by", "Enter who called or knocked");
  return null;
}

const ANSWER_WORDS: Record<RollCallAnswer, string> = {
  aware: "is aware",
  agreed: "agreed",
  "needs-help": "needs help",
  "not-reached": "was not reached",
  waived: "was waived",
};

function sentenceOf(file: LineFile, { propertyId, unitId }: Door, word: RollCallWord): string {
  const unit = file.units.find(({ id }) => id === unitId)?.name ?? "";
  const place = [sayProperty(file, propertyId), unit].filter((part) => part !== "").join(", ");
  const what =
    word.matter === "drains-off" ? "Drain shutdown of" : "Drains back on after the shutdown of";
  const who = word.spokeWith === "" ? "" : ` (${word.spokeWith})`;
  const said = word.words === "" ? "" : `: ${word.words}`;
  return `${what} ${formatDate(word.forDay)}: ${place}${who} ${ANSWER_WORDS[word.answer]}, by ${word.by}${said}`;
}
