import { isStatutory } from "../clocks/statutory-clocks.ts";
import { tellingWords } from "../clocks/telling.ts";
import { heldNames } from "../consent/held-names.ts";
import { consentTable } from "../consent/table.ts";
import type { Hold, HoldCause } from "../facts/hold.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Clock } from "../findings/clock.ts";
import type { Report } from "../findings/report.ts";
import { chaseList } from "../notices/told.ts";
import { sayParty, sayProperty } from "../party/say.ts";
import { openItems, roundsOf } from "../permit/corrections.ts";
import { moverOf } from "../permit/mover.ts";
import { permitSentence } from "../permit/say.ts";
import { permitStateOf } from "../permit/steps.ts";
import { capital } from "../say/capital.ts";
import { forCount, sayCount, sayParts } from "../say/count.ts";
import { sayList } from "../say/say-list.ts";
import { latestSplit } from "../split/latest-split.ts";
import { isStale } from "../split/stale.ts";
import { CAUSE_WORDS } from "../stops/cause-words.ts";
import { STOP_WORDS } from "../stops/stop-words.ts";
import { rulingEffects } from "../tiein/ruling-effects.ts";
import type { Day } from "../time/day.ts";
import { daysBetween } from "../time/days.ts";
import { formatDay, formatNearDay, onNearDay } from "../time/format-day.ts";
import type { DueThing, Question, WaitsOn } from "./answer.ts";
import { type ClockGroup, clockWords, runningClocks } from "./clock-words.ts";
import { feeThings } from "./fee-things.ts";
import { moneyThings } from "./money-things.ts";
import { paperThings } from "./paper-things.ts";
import { refusalPaths } from "./refusal-path.ts";
import { replyThings } from "./reply-things.ts";
import { rollCallThings } from "./roll-call-things.ts";

/** What is due within so many days stands on the desk; later things wait on the line's own page. */
const HORIZON = 7;

type Thing = Omit<DueThing, "lineId">;

/**
 * What is late, due, blocked and waiting on one line, the most pressing first. On a closed line only
 * replies that came in and wait.
 */
export function dueThings(file: LineFile, report: Report): DueThing[] {
  const replies = replyThings(file, report.today);
  const things = file.line.closedOn === null ? [...replies, ...openThings(file, report)] : replies;
  return inOrder(things.map((thing) => ({ lineId: file.line.id, ...thing })));
}

function openThings(file: LineFile, report: Report): Thing[] {
  return [
    ...clockThings(file, report),
    ...rollCallThings(file, report),
    ...paperThings(file),
    ...letterThings(file, report),
    ...nameThings(file),
    ...holdThings(report),
    ...rulingThings(file, report),
    ...refusalThings(file, report),
    ...pathThings(file, report),
    ...splitThings(file, report),
    ...moneyThings(file, report),
    ...permitThings(file, report),
    ...feeThings(file, report),
  ];
}

const RANK: Record<DueThing["kind"], number> = { late: 0, due: 1, blocked: 2, waiting: 3 };

/** Late before due before blocked before waiting; then by day, those without a day last. */
export function inOrder(things: readonly DueThing[]): DueThing[] {
  return things.toSorted(
    (one, other) =>
      RANK[one.kind] - RANK[other.kind] ||
      (one.on ?? "9999").localeCompare(other.on ?? "9999") ||
      one.sentence.localeCompare(other.sentence),
  );
}

function clockThings(file: LineFile, report: Report): Thing[] {
  return runningClocks(file, report.clocks).flatMap((group) => clockThing(file, report, group));
}

function clockThing(file: LineFile, { today }: Report, group: ClockGroup): Thing[] {
  const { clock } = group;
  const isTelling = group.kind === "reply" || clock.telling !== null;
  const question = isTelling ? "notices" : questionOf(file, clock);
  const ahead = daysBetween(today, clock.on);
  const thing = {
    sentence: clockSentence(file, group, today),
    on: clock.on,
    question,
    waitsOn: waitsOnClock(file, group),
    ...(isStatutory(clock) ? { where: "notices/statutory" } : {}),
  };
  if (clock.meaning === "not-before") return [{ ...thing, kind: "waiting" }];
  if (ahead < 0) return [{ ...thing, kind: "late" }];
  return ahead > HORIZON ? [] : [{ ...thing, kind: "due" }];
}

/** A reply is its reader's to give; a window opens when marks are there, or when its day comes. */
function waitsOnClock(file: LineFile, { clock, kind }: ClockGroup): WaitsOn {
  if (kind === "reply") return "neighbor";
  if (kind === "inspection") return "authority";
  if (clock.meaning === "not-before") return kind === "locate" ? "utility" : "date";
  const permit = file.permits.find(({ id }) => id === clock.subjectId);
  const state = permit === undefined ? null : permitStateOf(file, permit);
  const isAnswer = clock.meaning === "due-by" && state !== null && moverOf(state) === "authority";
  return isAnswer ? "authority" : "office";
}

function questionOf(file: LineFile, clock: Clock): Question {
  return file.permits.some(({ id }) => id === clock.subjectId) ? "authority" : "schedule";
}

function clockSentence(file: LineFile, group: ClockGroup, today: Day): string {
  const words = sayParts([clockWords(file, group, today)]);
  const day = formatDay(group.clock.on, today);
  const { on, telling } = group.clock;
  const when = words.includes(formatNearDay(on, today)) ? words : `${words} (${day})`;
  return telling === null ? when : `${when}: ${tellingWords(file, telling)}`;
}

function letterThings(file: LineFile, { today }: Report): Thing[] {
  const drafts = file.notices.filter(({ state }) => state === "draft").length;
  const back = chaseList(file, today)
    .filter(({ reason }) => reason === "came-back")
    .map(
      ({ partyId, since }): Thing => ({
        sentence: `The letter to ${sayParty(file, partyId)} was returned ${onNearDay(since, today)}`,
        on: since,
        kind: "due",
        waitsOn: "office",
        question: "notices",
      }),
    );
  if (drafts === 0) return back;
  const sentence = `${sayCount(drafts, "letter")} drafted, not sent`;
  return [...back, { sentence, on: null, kind: "due", waitsOn: "office", question: "notices" }];
}

/** Signatures in another name than the party's wait for a person of the office. */
function nameThings(file: LineFile): Thing[] {
  return heldNames(file).map(({ consent, signature }) => ({
    sentence: `${sayParty(file, consent.partyId)}: the consent to ${consent.kind} was signed as “${signature.signedName}”; check the name before it counts`,
    on: consent.stateOn,
    kind: "due" as const,
    waitsOn: "office" as const,
    question: "notices" as const,
    where: "notices/consents",
  }));
}

const HOLD_QUESTION: Record<HoldCause, Question> = {
  "household-need": "who",
  "tie-in-owner-unknown": "reconcile",
  "tie-in-undecided": "reconcile",
  "ruling-not-done": "reconcile",
  "entry-undecided": "reconcile",
  "entry-not-inspected": "camera",
  "entry-place-unclear": "reconcile",
  "station-relative-only": "camera",
  "responsibility-unclear": "responsibility",
  "easement-missing": "authority",
  "crossing-seen": "camera",
  "crossing-not-ruled-out": "camera",
  "land-unknown": "who",
  "branch-unmeasured": "schedule",
  "utility-open": "authority",
};

/** Who can settle a hold's cause. */
const HOLD_WAITS: Record<HoldCause, WaitsOn> = {
  "household-need": "office",
  "tie-in-owner-unknown": "office",
  "tie-in-undecided": "office",
  "ruling-not-done": "neighbor",
  "entry-undecided": "office",
  "entry-not-inspected": "crew",
  "entry-place-unclear": "office",
  "station-relative-only": "crew",
  "responsibility-unclear": "office",
  "easement-missing": "neighbor",
  "crossing-seen": "utility",
  "crossing-not-ruled-out": "crew",
  "land-unknown": "office",
  "branch-unmeasured": "crew",
  "utility-open": "utility",
};

/** Holds of one cause that stop the same things are told together. */
function holdThings({ holds }: Report): Thing[] {
  const groups = new Map<string, Hold[]>();
  for (const hold of holds.filter(({ waiver }) => waiver === null)) {
    const key = [hold.cause, ...hold.stops].join(" ");
    groups.set(key, [...(groups.get(key) ?? []), hold]);
  }
  return [...groups.values()].flatMap((group) =>
    group.slice(0, 1).map(({ cause }) => ({
      sentence: holdSentence(group),
      on: null,
      kind: "blocked" as const,
      waitsOn: HOLD_WAITS[cause],
      question: HOLD_QUESTION[cause],
    })),
  );
}

/** `T3 and T6 (owner not proven) stop capping, lining, the final split and a demand for money`. */
function holdSentence(group: readonly Hold[]): string {
  const [first] = group;
  if (first === undefined) return "";
  const labels = sayList(group.map(({ subjectLabel }) => subjectLabel));
  const stops = sayList(first.stops.map((stop) => STOP_WORDS[stop]));
  return capital(
    `${labels} (${CAUSE_WORDS[first.cause]}) ${forCount(group.length, "stops", "stop")} ${stops}`,
  );
}

/** What a ruling on a tie-in asks for, by its day; without a day it waits on whoever has to move. */
function rulingThings(file: LineFile, { today, tieIns }: Report): Thing[] {
  return rulingEffects(file, tieIns).flatMap(({ ruling, asks, mover }): Thing[] => {
    if (asks === null) return [];
    const thing = {
      sentence: asks,
      on: ruling.dueOn,
      question: "reconcile" as const,
      waitsOn: mover === "office" ? ("office" as const) : ("neighbor" as const),
    };
    if (ruling.dueOn === null) return [{ ...thing, kind: mover === "office" ? "due" : "waiting" }];
    const ahead = daysBetween(today, ruling.dueOn);
    if (ahead < 0) return [{ ...thing, kind: "late" }];
    return [{ ...thing, kind: ahead > HORIZON ? "waiting" : "due" }];
  });
}

/** A no by an owner blocks what was asked. */
function refusalThings(file: LineFile, report: Report): Thing[] {
  return consentTable(file, report).flatMap(({ propertyId, cells }) =>
    Object.entries(cells).flatMap(([kind, cell]) => {
      const no = cell.open.filter(
        ({ standing }) => standing === "refused" || standing === "withdrawn",
      );
      return no.map(({ partyId, standing }): Thing => {
        const did = standing === "refused" ? "refused" : "withdrew";
        const what = kind.startsWith("agreement") ? "to sign the agreement" : `consent to ${kind}`;
        return {
          sentence: `${sayParty(file, partyId)} ${did} ${what} for ${sayProperty(file, propertyId)}`,
          on: null,
          kind: "blocked",
          waitsOn: "neighbor",
          question: kind === "pay" ? "cost" : "notices",
          where: "notices/consents",
        };
      });
    }),
  );
}

/** The next lawful step after a refusal, once its day has come or is near. */
function pathThings(file: LineFile, report: Report): Thing[] {
  return refusalPaths(file, report).flatMap(({ withheld, shown, steps }): Thing[] => {
    const next = steps.find(({ takenOn }) => takenOn === null);
    // Nobody is pressed before something shows that they are on the line.
    // An objection is answered before anybody takes a step against it.
    if (withheld.how === "objected") return [];
    if (!shown || next === undefined || next.earliest === null) return [];
    if (daysBetween(report.today, next.earliest) > HORIZON) return [];
    const day = onNearDay(next.earliest, report.today);
    return [
      {
        sentence: `${withheld.place} ${withheld.how === "refused" ? "refused" : "has not answered"}: the next step, “${next.step.title}”, is open from ${day.replace(/^on /, "")}`,
        on: next.earliest,
        kind: "waiting",
        waitsOn: next.earliest > report.today ? "date" : "office",
        question: "notices",
      },
    ];
  });
}

function splitThings(file: LineFile, report: Report): Thing[] {
  const version = latestSplit(file);
  if (version === null) return [];
  const rows = consentTable(file, report).filter(({ cells }) => cells.pay.needed);
  const isAbout = (row: (typeof rows)[number], standing: string) =>
    row.cells.pay.open.some((each) => each.standing === standing);
  const superseded = rows.filter((row) => isAbout(row, "superseded-amount"));
  const asked = rows.filter(
    (row) =>
      !row.cells.pay.inHand &&
      row.cells.pay.open.every(({ standing }) => standing === null || standing === "asked"),
  );
  const things: Thing[] = [];
  const names = (of: typeof rows) =>
    sayList(
      of.map(({ propertyId }) => sayProperty(file, propertyId)),
      4,
    );
  if (isStale(report, version))
    things.push({
      sentence: "The split is out of date",
      on: null,
      kind: "due",
      waitsOn: "office",
      question: "cost",
      where: "cost/choose",
    });
  if (superseded.length > 0)
    things.push({
      sentence: `Signed for an earlier amount: ${names(superseded)}`,
      on: null,
      kind: "due",
      waitsOn: "neighbor",
      question: "cost",
      where: "notices/consents",
    });
  if (asked.length > 0 && version.sentAt !== null)
    things.push({
      sentence: `Not yet agreed to pay: ${names(asked)}`,
      on: null,
      kind: "waiting",
      waitsOn: "neighbor",
      question: "cost",
      where: "notices/consents",
    });
  return things;
}

const MOVER_KIND = { office: "due", authority: "waiting" } as const;

function permitThings(file: LineFile, { today }: Report): Thing[] {
  return file.permits.flatMap((permit): Thing[] => {
    const state = permitStateOf(file, permit);
    const mover = moverOf(state);
    if (mover !== "office" && mover !== "authority") return [];
    const kind = MOVER_KIND[mover];
    const round = state === "corrections" ? roundsOf(file, permit).at(-1) : undefined;
    const open = round === undefined ? [] : openItems(round);
    const left = open.length === 0 ? "" : `: ${sayCount(open.length, "comment")} not answered`;
    return [
      {
        sentence: `${permitSentence(file, permit, today)}${left}`,
        on: null,
        kind,
        waitsOn: mover,
        question: "authority",
        where: round === undefined ? "authority/permits" : "authority/corrections",
      },
    ];
  });
}
