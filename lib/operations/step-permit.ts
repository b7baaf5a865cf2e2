import { listJobs } from "#db/queries/job.ts";
import { getOffice } from "#db/queries/office.ts";
import { countSave } from "#db/queries/revision.ts";
import { insertRow, updateRow } from "#db/queries/row.ts";
import { clocksOf } from "#lib/domain/clocks/clocks.ts";
import { locateBar } from "#lib/domain/clocks/locate-bar.ts";
import { permitBars, ranOut } from "#lib/domain/clocks/permit-bars.ts";
import { asBuiltWanting } from "#lib/domain/closing/as-built.ts";
import { landWithoutConsent } from "#lib/domain/consent/land-consents.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Permit, PermitState, PermitStep } from "#lib/domain/facts/permit.ts";
import type { Upload } from "#lib/domain/facts/upload.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { finalBar } from "#lib/domain/packet/final-bar.ts";
import { RESUBMITS, resubmissionBar } from "#lib/domain/permit/corrections.ts";
import { inspectionBar } from "#lib/domain/permit/inspections.ts";
import { orderBar } from "#lib/domain/permit/order.ts";
import { permitName, permitStanding } from "#lib/domain/permit/say.ts";
import { PERMIT_STATE_WORDS } from "#lib/domain/permit/state-words.ts";
import {
  deedsOfStep,
  lastStepOf,
  nextStatesOf,
  permitStateOf,
  stepsOf,
} from "#lib/domain/permit/steps.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { sayList } from "#lib/domain/say/say-list.ts";
import { deedsOfWork } from "#lib/domain/split/work-deeds.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDate, formatDay } from "#lib/domain/time/format-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { refuseHeld } from "./held.ts";
import { pastDay } from "./past-day.ts";
import { cardSentence, type PostedCard, withCard } from "./post-card.ts";

interface StepWord {
  readonly lineId: string;
  readonly permitId: string;
  readonly state: PermitState;
  readonly on: Day;
  readonly note: string;
  /** Said with the step that its card was posted; no day, name and place: nothing is said of it. */
  readonly card?: PostedCard;
}

/**
 * Records where a permit has got to. Refuses a step that does not follow from the last one, a day
 * before it, going back to the authority with a comment unanswered, a step before the permit that it
 * waits for, backfill or a final without the inspections that the authority wants passed before, work
 * without every permit that it takes, a final without the as-built or anything else
 * that the authority asks for before it, work before the consent for each lot that it lies on, digging without a locate ticket in force, and submitting, working, calling for inspection or backfilling against a hold on what is
 * done that nobody waived.
 */
export function stepPermit(act: Act, word: StepWord): Result<{ stepId: string }, Refusal> {
  const { lineId, permitId, state, on, note, card = UNSAID } = word;
  const deal = { lineId, deed: "work-the-file", action: "step-permit" } as const;
  return changeLine(act, deal, (file) => {
    const permit = find(file.permits, permitId, { path: "permitId", what: "the permit" });
    if (!permit.ok) return permit;
    const wrong = wrongStep(act, file, { permit: permit.value, state, on });
    if (wrong !== null) return wrong;
    if (state === "emergency" && note.trim() === "") return refuse("missing-value", "note", LEAVE);
    const carded = isSaid(card) ? withCard(act, permit.value, card) : permit;
    if (!carded.ok) return carded;
    const sent = state === "as-built-submitted" ? newestAsBuilt(act, file) : undefined;
    const step: PermitStep = {
      id: act.newId(),
      permitId,
      state,
      on,
      by: act.actor.name,
      note: note.trim(),
      uploadId: sent?.id ?? null,
    };
    return ok({
      value: { stepId: step.id },
      sentence: sentenceOf(step, { before: permit.value, after: carded.value, sent }),
      detail: { before: permitStateOf(file, permit.value), after: step },
      write: (db) => {
        insertRow(db, "permitSteps", { lineId, row: step });
        if (carded.value === permit.value) return;
        updateRow(db, "permits", { lineId, row: carded.value });
        countSave(db, { lineId, table: "permits", by: act.actor.name, at: act.now });
      },
    });
  });
}

function sentenceOf(
  { state, on, note }: PermitStep,
  { before, after, sent }: { before: Permit; after: Permit; sent: Upload | undefined },
): string {
  const posted = cardSentence(before, after);
  const said = `${permitName(before)}: ${PERMIT_STATE_WORDS[state]}, ${formatDate(on)}${note === "" ? "." : `. ${note}`}`;
  return `${said}${sent === undefined ? "" : ` Sent: ${sent.name}`}${posted === "" ? "" : ` ${capital(posted)}.`}`;
}

const UNSAID: PostedCard = { postedOn: null, postedBy: "", postedPlace: "" };

function isSaid({ postedOn, postedBy, postedPlace }: PostedCard): boolean {
  return postedOn !== null || (postedBy + postedPlace).trim() !== "";
}

/** The as-built that was made last: what is sent with the step stays as it was sent. */
function newestAsBuilt({ db }: Act, { line, uploads }: LineFile): Upload | undefined {
  const made = listJobs(db, line.id).find(
    ({ kind, state }) => kind === "as-built" && state === "done",
  );
  return uploads.find(({ id }) => id === made?.uploadId);
}

const LEAVE = "Enter who at the authority allowed the work before the permit, and when";

function wrongStep(
  act: Act,
  file: LineFile,
  { permit, state, on }: { permit: Permit; state: PermitState; on: Day },
) {
  const last = lastStepOf(file, permit);
  const now = permitStateOf(file, permit);
  const first = last === null && state === "drafting";
  if (!first && !nextStatesOf(file, permit).includes(state))
    return refuse(
      "not-in-this-state",
      "state",
      `${permitName(permit)} is at “${now.replaceAll("-", " ")}”; “${state.replaceAll("-", " ")}” does not follow from there`,
    );
  const wrongDay = pastDay(act, { day: on, path: "on" });
  if (wrongDay !== null) return wrongDay;
  if (last !== null && on < last.on)
    return refuse("bad-value", "on", `The step before it was on ${formatDate(last.on)}`);
  const early = orderBar(file, permit, state);
  if (early !== null) return refuse("not-in-this-state", "state", early);
  const unanswered = RESUBMITS.includes(state) ? resubmissionBar(file, permit) : null;
  if (unanswered !== null) return refuse("not-in-this-state", "state", unanswered);
  const late = lateExtension(file, permit, { state, on });
  if (late !== null) return refuse("not-in-this-state", "state", late);
  const uninspected = uninspectedBefore(file, permit, state);
  if (uninspected !== null) return refuse("not-in-this-state", "state", uninspected);
  const report = reportOn(file, act.today);
  const lacking = state === "final" ? lackingBefore(act, { file, report, permit }) : null;
  if (lacking !== null) return refuse("not-in-this-state", "state", lacking);
  const wanting = wantingPermits(file, report, { permit, state, on });
  if (wanting !== null) return wanting;
  const work = deedsOfWork(file, report.tieIns);
  const held = refuseHeld(report, deedsOfStep(state, work), "state");
  return (
    held ??
    unconsented(file, report, { permit, state }) ??
    unlocated(file, report, { permit, state, on })
  );
}

function unlocated(
  file: LineFile,
  report: Report,
  step: { permit: Permit; state: PermitState; on: Day },
) {
  const bar = locateBar(file, report, step);
  return bar === null ? null : refuse("not-in-this-state", "state", bar);
}

/** Nobody’s land is entered or dug before they agreed to it; what the authority’s emergency word allows is its own. */
function unconsented(
  file: LineFile,
  report: Report,
  { permit, state }: { permit: Permit; state: PermitState },
) {
  const begun = stepsOf(file, permit).some((step) => step.state === "working");
  if (state !== "working" && (state !== "inspection-requested" || begun)) return null;
  const missing = landWithoutConsent(file, report);
  if (missing.length === 0) return null;
  const words = `${capital(sayList(missing))}: record it under “Who has been notified?”, Consents, before the work begins`;
  return refuse("not-in-this-state", "state", words);
}

/** The as-built and whatever else the authority asks for before the final; of an office that nobody entered its papers are not known. */
function lackingBefore(
  act: Act,
  { file, report, permit }: { file: LineFile; report: Report; permit: Permit },
): string | null {
  const unbuilt = asBuiltWanting(file, permit, report.tieIns);
  const office = getOffice(act.db);
  if (unbuilt !== null || office === null) return unbuilt;
  return finalBar({ file, report, office }, permit);
}

/** An extension is asked for while the permit runs, and by the day that the authority’s rule gives. */
function lateExtension(
  file: LineFile,
  permit: Permit,
  { state, on }: { state: PermitState; on: Day },
): string | null {
  if (state !== "extension-asked") return null;
  const missed = clocksOf(file, on).find(
    (clock) =>
      clock.subjectId === permit.id &&
      clock.on < on &&
      !clock.settled &&
      (clock.meaning === "expires" || isAskBy(file, clock.key)),
  );
  if (missed === undefined) return null;
  return missed.meaning === "expires"
    ? `${permitName(permit)} expired on ${formatDate(missed.on)}: it can only be extended by the authority’s own word, or applied for again`
    : `${missed.title} was due by ${formatDate(missed.on)}. If the authority extends it all the same, record it as extended`;
}

function isAskBy(file: LineFile, key: string): boolean {
  return (file.authority?.clockRules ?? []).some(
    ({ id, event }) => event === "permit-expires" && key.startsWith(`${id}:`),
  );
}

/** Covering the pipe, what follows it, and the final want the inspections of the authority’s list. */
function uninspectedBefore(file: LineFile, permit: Permit, state: PermitState): string | null {
  if (state === "final") return inspectionBar(file, permit, "final");
  const covers = state === "passed-may-backfill" || state === "as-built-submitted";
  return covers ? inspectionBar(file, permit, "backfill") : null;
}

/** Work begins, and is shown to an inspector, only under every permit that it takes. */
const UNDER_PERMITS: readonly PermitState[] = ["working", "inspection-requested"];

function wantingPermits(
  file: LineFile,
  { tieIns }: Report,
  { permit, state, on }: { permit: Permit; state: PermitState; on: Day },
) {
  if (!UNDER_PERMITS.includes(state)) return null;
  const clocks = clocksOf(file, on);
  const others = permitBars(file, on, tieIns, clocks)
    // What is final needs no other permit to be looked at beside it; more work does.
    .filter(({ isDone }) => state === "working" || !isDone)
    .map(({ because }) => because);
  const end = ranOut(clocks, permit.id, on);
  const own =
    end === null
      ? []
      : [
          `${permitStanding(file, permit)} and expired ${formatDay(end, on)}, so it has to be extended or applied for again`,
        ];
  const [first] = [...own, ...others];
  return first === undefined ? null : refuse("not-in-this-state", "state", first);
}
