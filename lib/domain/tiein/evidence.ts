import type { TieIn } from "../facts/line.ts";
import type { Ruling } from "../facts/ruling.ts";
import type { EvidenceLevel, TestKind, TieInTest } from "../facts/test.ts";
import { capital } from "../say/capital.ts";
import { sayAny } from "../say/say-list.ts";
import { isControlRun } from "./control-run.ts";
import { ruledWords } from "./ruling-in-force.ts";

/** How well it is known whose a tie-in is, for the property that most speaks for. */
export interface Evidence {
  readonly level: EvidenceLevel;
  /** The rule that gave the level, in one sentence with what was seen. */
  readonly reason: string;
  /** The property that the evidence points at; null where it points at none. */
  readonly propertyId: string | null;
}

/** What is known besides the tests. */
export interface EvidenceHints {
  /** Property that a record entry names for this tie-in. */
  readonly recordPropertyId: string | null;
  /** Properties that may be on the line and have no tie-in yet, or whose lot is crossed here. */
  readonly nearbyPropertyIds: readonly string[];
  /** The ruling by which the authority accepted the tie-in as it is, or the record as wrong. */
  readonly acceptedBy?: Ruling | null;
  readonly nameOf: (propertyId: string) => string;
}

/** Money may be asked and work on the tie-in done from here on, or with the owner's own word. */
export const DEMAND_LEVEL: EvidenceLevel = 5;

/** From here on a test has shown whose it is, proof or not. */
const SHOWN_LEVEL: EvidenceLevel = 4;

/** What tests that show somebody else leave of it. */
const CONTRADICTED_LEVEL: EvidenceLevel = 3;

const NO_HINTS: EvidenceHints = {
  recordPropertyId: null,
  nearbyPropertyIds: [],
  nameOf: (propertyId) => propertyId,
};

const SEEN_AS: Record<TestKind, string> = {
  dye: "dye",
  flow: "water",
  trace: "a trace",
  smoke: "smoke",
  excavation: "digging",
  statement: "a statement",
};

/**
 * The level on the evidence ladder: 6 owner or authority accepted it in writing, or exposed by digging; 5 dye seen twice, filmed,
 * other water barred, by two people, and a control address negative; 4 dye or flow seen once;
 * 3 a trace or smoke points at a property; 2 a record or a statement names one; 1 plausible by
 * position; 0 unknown. A test that saw nothing lowers nothing: slow pipes, traps and blockages hide
 * dye. Positive tests at two properties, or a positive control, hold the level at 3.
 */
export function evidenceLevel(
  tieIn: TieIn,
  tests: readonly TieInTest[],
  hints: EvidenceHints = NO_HINTS,
): Evidence {
  const own = tests.filter((test) => test.tieInId === tieIn.id && !isControlRun(test));
  const found = strongest(tieIn, own, hints);
  const weak = own
    .filter((test) => test.result !== "positive")
    .map((test) => weakWords(test, hints));
  return { ...found, reason: [found.reason, ...weak].join(" ") };
}

/** The property that tests show a tie-in to be that of, by dye, water or digging; null below level 4. */
export function shownBy(tests: readonly TieInTest[], tieIn: TieIn): string | null {
  const { level, propertyId } = evidenceLevel(tieIn, tests);
  return level >= SHOWN_LEVEL ? propertyId : null;
}

/**
 * What is known of whose a tie-in is, for the property that it is taken to be. Where tests show it to be
 * another's that is no proof for this one: it counts as a trace, until somebody settles it otherwise or
 * tests again.
 */
export function evidenceFor(
  propertyId: string | null,
  evidence: Evidence,
  nameOf: EvidenceHints["nameOf"],
): Evidence {
  if (!contradicts(propertyId, evidence)) return evidence;
  const reason = `It is assigned to ${nameOf(propertyId ?? "")}, but tests say otherwise. ${evidence.reason}`;
  return { ...evidence, level: CONTRADICTED_LEVEL, reason };
}

/** True where tests have shown another property than the one that a tie-in is taken to be. */
export function contradicts(propertyId: string | null, { level, propertyId: shown }: Evidence) {
  return level >= SHOWN_LEVEL && propertyId !== null && shown !== null && shown !== propertyId;
}

/** True where the evidence bears asking a named owner for money, or working on the tie-in. */
export function bearsDemand(level: EvidenceLevel, ownerAccepted: boolean): boolean {
  return level >= DEMAND_LEVEL || ownerAccepted;
}

function strongest(tieIn: TieIn, own: readonly TieInTest[], hints: EvidenceHints): Evidence {
  const positive = own.filter((test) => test.result === "positive" && test.propertyId !== null);
  return (
    byOwner(tieIn, hints) ??
    byAuthority(tieIn, hints) ??
    byDigging(positive, hints) ??
    byWater(positive, hints) ??
    byTrace(positive, hints) ??
    byRecord(tieIn, positive, hints) ??
    byPosition(own, hints)
  );
}

function byOwner(tieIn: TieIn, { nameOf }: EvidenceHints): Evidence | null {
  if (!tieIn.ownerAccepted) return null;
  const whose =
    tieIn.propertyId === null ? "The owner" : `The owner of ${nameOf(tieIn.propertyId)}`;
  return {
    level: 6,
    reason: `${whose} accepted in writing that it is theirs.`,
    propertyId: tieIn.propertyId,
  };
}

/** The authority's written word on a tie-in that a person put down to a property. */
function byAuthority(tieIn: TieIn, { acceptedBy, nameOf }: EvidenceHints): Evidence | null {
  if (!acceptedBy || tieIn.propertyId === null) return null;
  return {
    level: 6,
    reason: `Authority ruling for ${nameOf(tieIn.propertyId)}: it ${ruledWords(acceptedBy)}.`,
    propertyId: tieIn.propertyId,
  };
}

function byDigging(positive: readonly TieInTest[], { nameOf }: EvidenceHints): Evidence | null {
  const dug = positive.find((test) => test.kind === "excavation");
  if (!dug?.propertyId) return null;
  return {
    level: 6,
    reason: `Excavation showed it leads to ${nameOf(dug.propertyId)}.`,
    propertyId: dug.propertyId,
  };
}

function byWater(positive: readonly TieInTest[], { nameOf }: EvidenceHints): Evidence | null {
  const seen = positive.filter((test) => test.kind === "dye" || test.kind === "flow");
  const [first] = seen;
  if (!first?.propertyId) return null;
  const places = [...new Set(seen.flatMap((test) => test.propertyId ?? []))];
  if (places.length > 1) {
    const names = places.map(nameOf).join(" and ");
    return {
      level: 3,
      reason: `Tests at ${names} were both seen here: the branch may be shared; dig or test again.`,
      propertyId: null,
    };
  }
  const { propertyId } = first;
  const name = nameOf(propertyId);
  const failed = seen.find((test) => test.controlResult === "positive");
  if (failed)
    return {
      level: 3,
      reason: `A test at ${name} was seen here, but so was its control: the test can’t tell the two apart.`,
      propertyId,
    };
  const missing = missingForProof(seen);
  if (missing.length === 0)
    return {
      level: 5,
      reason: `Dye from ${name} was seen here ${timesWords(seen)}, on video, with other water off, by two people, with a negative control.`,
      propertyId,
    };
  return {
    level: 4,
    reason: `${capital(SEEN_AS[first.kind])} from ${name} was seen here; still needed for proof: ${missing.join(", ")}.`,
    propertyId,
  };
}

/** What keeps the dye tests of one property from being proof. */
export function missingForProof(seen: readonly TieInTest[]): string[] {
  const dye = seen.filter((test) => test.kind === "dye");
  const good = (want: (test: TieInTest) => boolean) => dye.filter(want).length >= 2;
  const wants: readonly [boolean, string][] = [
    [dye.length >= 2, "a second dye test"],
    [
      dye.some((test) => test.controlResult === "negative"),
      "a negative control at another address",
    ],
    [dye.length < 2 || good((test) => test.filmed.trim() !== ""), "video of both tests"],
    [dye.length < 2 || good(hasTwoNames), "two names on both tests"],
    [dye.length < 2 || good((test) => test.otherWaterBarred), "other water shut off in both tests"],
  ];
  return wants.flatMap(([there, words]) => (there ? [] : [words]));
}

function hasTwoNames(test: TieInTest): boolean {
  const dosed = test.dosedBy.trim().toLowerCase();
  const watched = test.watchedBy.trim().toLowerCase();
  return dosed !== "" && watched !== "" && dosed !== watched;
}

function byTrace(positive: readonly TieInTest[], { nameOf }: EvidenceHints): Evidence | null {
  const traced = positive.find((test) => test.kind === "trace" || test.kind === "smoke");
  if (!traced?.propertyId) return null;
  const name = nameOf(traced.propertyId);
  const reason =
    traced.kind === "trace"
      ? `A trace from it points to ${name}.`
      : `Smoke blown into it showed at ${name}; it can't tell which fixture.`;
  return { level: 3, reason, propertyId: traced.propertyId };
}

function byRecord(
  tieIn: TieIn,
  positive: readonly TieInTest[],
  { recordPropertyId, nameOf }: EvidenceHints,
): Evidence | null {
  if (recordPropertyId !== null)
    return {
      level: 2,
      reason: `The permit record names ${nameOf(recordPropertyId)}; no test confirms it yet.`,
      propertyId: recordPropertyId,
    };
  const said = positive.find((test) => test.kind === "statement");
  if (said?.propertyId)
    return {
      level: 2,
      reason: `A statement names ${nameOf(said.propertyId)}.`,
      propertyId: said.propertyId,
    };
  if (tieIn.propertyId === null) return null;
  const by = tieIn.settledBy === "" ? "" : ` by ${tieIn.settledBy}`;
  return {
    level: 2,
    reason: `It was assigned to ${nameOf(tieIn.propertyId)}${by}; no test confirms it.`,
    propertyId: tieIn.propertyId,
  };
}

function byPosition(
  own: readonly TieInTest[],
  { nearbyPropertyIds, nameOf }: EvidenceHints,
): Evidence {
  const tried = own.flatMap((test) => test.propertyId ?? []);
  const places = [...new Set([...nearbyPropertyIds, ...tried])];
  if (places.length === 0)
    return { level: 0, reason: "Nothing shows the owner yet.", propertyId: null };
  const names = sayAny(places.map(nameOf), 4);
  return {
    level: 1,
    reason: `By location it may belong to ${names}; no evidence yet.`,
    propertyId: places.length === 1 ? (places[0] ?? null) : null,
  };
}

function weakWords(test: TieInTest, { nameOf }: EvidenceHints): string {
  const where = test.propertyId === null ? "" : ` at ${nameOf(test.propertyId)}`;
  if (test.result === "inconclusive") return `A ${test.kind} test${where} was inconclusive.`;
  const waited = test.waitMinutes === null ? "" : ` in ${test.waitMinutes} minutes`;
  return `A ${test.kind} test${where} was not seen${waited}: weak evidence, since slow pipes, traps and blockages hide it.`;
}

function timesWords(seen: readonly TieInTest[]): string {
  const times = seen.filter((test) => test.kind === "dye").length;
  return times === 2 ? "twice" : `${times} times`;
}
