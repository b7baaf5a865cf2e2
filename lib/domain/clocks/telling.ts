import { type Happening, sentDayOf } from "../calendar/happenings.ts";
import { dayOfRule } from "../calendar/rule-day.ts";
import type { ClockEvent, ClockRule } from "../facts/clock-rule.ts";
import { LETTER_KINDS, LETTERS, type LetterKind } from "../facts/letter-kind.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { DeliveryMethod, Notice } from "../facts/notice.ts";
import type { Telling, Told } from "../findings/clock.ts";
import { arrivalOf, attemptProof } from "../notices/arrival.ts";
import { type Addressee, pauseAudience, startAudience, tenantsAt } from "../notices/audience.ts";
import { hasGone } from "../notices/way-rule.ts";
import { sayParty } from "../party/say.ts";
import { sayList } from "../say/say-list.ts";
import { stopsInForce } from "../testing/test-day-results.ts";
import type { Day } from "../time/day.ts";
import { addDays } from "../time/days.ts";
import { letterDay } from "../time/letter-day.ts";

/** The letter that tells of an event before it comes. */
function letterTelling(event: ClockEvent): LetterKind | undefined {
  return LETTER_KINDS.find((kind) => LETTERS[kind].tellsOf === event);
}

/** A letter older than this told of another day. */
const TELLS_FOR = 60;

/**
 * How far telling people of an event has got, under a rule that wants it done so long before; null
 * where no letter tells of such an event. Everybody counts on their own: one letter to one of seven
 * tells one. What went by the post has the rule's days for mail less.
 */
export function tellingBefore(
  file: LineFile,
  rule: ClockRule,
  happening: Happening,
): Telling | null {
  const kind = letterTelling(happening.event);
  if (rule.way !== "before" || kind === undefined) return null;
  const holidays = file.authority?.holidays ?? [];
  const lastDay = (mailed: boolean): Day => {
    const { on, at } = dayOfRule(rule, happening.on, holidays, { ...happening, mailed });
    // A letter has a day and no hour: on the day of an hour it may have gone too late.
    return at === "" ? on : addDays(on, -1);
  };
  const from = firstDay(file, happening);
  const told = whoIsTold(file, kind, { from, on: happening.on });
  const audience = audienceFor(file, happening);
  return {
    known: audience !== null && (audience.length > 0 || happening.event === "tenant-entry"),
    recipients: (audience ?? []).map((each) => {
      const one = told(each);
      return { ...one, late: one.on !== null && one.on > lastDay(one.mailed) };
    }),
  };
}

/** How far telling everybody of the start of the work has got, whatever day it names. */
export function tellingOfStart(file: LineFile): Telling {
  const told = whoIsTold(file, "work-start", { from: "", on: null });
  const recipients = startAudience(file).map((each) => ({ ...told(each), late: false }));
  return { known: recipients.length > 0, recipients };
}

/** Whether everybody was told, and in time. */
export function isToldInTime({ known, recipients }: Telling): boolean {
  return known && recipients.every(({ on, late }) => on !== null && !late);
}

/** `3 of 7 told, 2 confirmed; not told: A and B; told late: C`. */
export function tellingWords(file: LineFile, telling: Telling): string {
  const { recipients, known } = telling;
  if (recipients.length === 0)
    return known ? "no one there is a tenant" : "no one to notify is on file";
  const told = recipients.filter(({ on }) => on !== null);
  const confirmed = told.filter(({ confirmedOn }) => confirmedOn !== null);
  const names = (of: readonly Told[]) =>
    sayList([...new Set(of.map(({ partyId }) => sayParty(file, partyId)))]);
  const missing = untoldIn(telling);
  const late = told.filter((each) => each.late);
  return [
    `${told.length} of ${recipients.length} notified, ${confirmed.length} confirmed`,
    missing.length === 0 ? "" : `not notified: ${names(missing)}`,
    late.length === 0 ? "" : `notified late: ${names(late)}`,
  ]
    .filter((part) => part !== "")
    .join("; ");
}

/** Those to whom no letter went that did not come back. */
export function untoldIn({ recipients }: Telling): Told[] {
  return recipients.filter(({ on }) => on === null);
}

/** Whom an event concerns; null where the file does not say. */
function audienceFor(file: LineFile, { event, on }: Happening): Addressee[] | null {
  if (event === "drains-paused") return pauseAudience(file);
  if (event === "work-begins") return startAudience(file);
  const planned = file.testDays
    .filter((day) => day.on === on)
    .flatMap((day) => stopsInForce(file, day).flatMap(({ propertyId }) => propertyId ?? []));
  const written = file.notices.flatMap(({ kind, propertyId }) =>
    kind === "test-visit" && propertyId !== null ? [propertyId] : [],
  );
  const places = [...new Set(planned.length > 0 ? planned : written)];
  return places.length === 0 ? null : places.flatMap((id) => tenantsAt(file, id));
}

/** Letters before this day told of an earlier event of the kind, or of another day. */
function firstDay(file: LineFile, { event, on }: Happening): Day {
  const earlier = file.events
    .filter((each) => each.event === event && each.on < on)
    .map((each) => addDays(each.on, 1));
  return [addDays(on, -TELLS_FOR), ...earlier].toSorted().at(-1) ?? "";
}

interface Window {
  readonly from: Day;
  /** The day that the letters have to name; null: any. */
  readonly on: Day | null;
}

/** Looks up how one person was told: by the first attempt that did not come back. */
function whoIsTold(file: LineFile, kind: LetterKind, { from, on }: Window) {
  const letters = file.notices.filter(
    (notice) => notice.kind === kind && notice.state === "sent" && namesDay(notice, on),
  );
  return ({ partyId, propertyId }: Addressee): Omit<Told, "late"> => {
    const own = letters.filter(
      (letter) =>
        letter.partyId === partyId &&
        (letter.propertyId === propertyId || letter.propertyId === null),
    );
    const [first] = own
      .flatMap((letter) => attemptsOf(file, letter))
      .filter((attempt) => attempt.on >= from && (on === null || attempt.on <= on))
      .toSorted((one, other) => one.on.localeCompare(other.on));
    const confirmed = own.flatMap((letter) => arrivalOf(file, letter).on ?? []).toSorted();
    return {
      partyId,
      propertyId,
      on: first?.on ?? null,
      mailed: first?.mailed ?? false,
      confirmedOn: first === undefined ? null : (confirmed.find((day) => day >= from) ?? null),
    };
  };
}

/** What was sent says which day it is about; a letter of which only the record is left may be. */
function namesDay({ frozen, language }: Notice, on: Day | null): boolean {
  if (on === null || frozen === null) return true;
  return new RegExp(`(?<!\\d)${letterDay(on, language)}`).test(frozen);
}

const POST: readonly DeliveryMethod[] = ["first-class", "certified"];

/** Every attempt that may have told somebody: it did not come back; an answer tells in any case. */
function attemptsOf(file: LineFile, letter: Notice): { on: Day; mailed: boolean }[] {
  const attempts = file.deliveries.filter(({ noticeId }) => noticeId === letter.id);
  const sent = sentDayOf(file, letter);
  if (attempts.length === 0) return sent === null ? [] : [{ on: sent, mailed: false }];
  const went = attempts
    .filter((each) => hasGone(each) || attemptProof(file, letter, each) !== null)
    .map(({ sentOn, method }) => ({ on: sentOn, mailed: POST.includes(method) }));
  const { on, by } = arrivalOf(file, letter);
  return on !== null && by === "answer" ? [...went, { on, mailed: false }] : went;
}
