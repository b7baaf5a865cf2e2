import type { Hold, HoldStop } from "../facts/hold.ts";
import type { TieInFinding } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { type Stretch, touches } from "../length/stretch.ts";
import { STOP_WORDS } from "./stop-words.ts";

/** Something that somebody is about to do. */
export interface Deed {
  readonly stop: HoldStop;
  /** Where; null: over the whole line, or nobody said where. */
  readonly stretch: Stretch | null;
}

/**
 * The holds that nobody waived and that stop one of these deeds over its stretch, in their order.
 * Whoever cuts, jets, caps, lines, bursts, digs, submits, asks for money or calls something final
 * asks here. A hold or a deed without a known place meets everything.
 */
export function holdsAgainst(holds: readonly Hold[], deeds: readonly Deed[]): Hold[] {
  const byStop = new Map<HoldStop, Deed[]>();
  for (const deed of deeds) {
    const alike = byStop.get(deed.stop);
    if (alike === undefined) byStop.set(deed.stop, [deed]);
    else alike.push(deed);
  }
  return holds.filter(
    (hold) =>
      hold.waiver === null &&
      hold.stops.some((stop) => byStop.get(stop)?.some((deed) => isStoppedBy(hold, deed))),
  );
}

function isStoppedBy({ stops, stretch }: Hold, deed: Deed): boolean {
  if (!stops.includes(deed.stop)) return false;
  return stretch === null || deed.stretch === null || touches(stretch, deed.stretch);
}

/** Why something is refused: the hold, what it stops, what lifts it, and where that is done. */
export function heldWords(held: readonly Hold[], deeds: readonly Deed[]): string {
  const [first, ...others] = held;
  if (first === undefined) return "";
  const stopped = deeds.find((deed) => isStoppedBy(first, deed))?.stop ?? first.stops[0];
  const what = stopped === undefined ? "" : ` It stops ${STOP_WORDS[stopped]}.`;
  const names = others.map(({ subjectLabel }) => subjectLabel).join(", ");
  const verb = others.length === 1 ? "So does 1 more" : `So do ${others.length} more`;
  const more = others.length === 0 ? "" : ` ${verb}: ${names}.`;
  const sentence = first.sentence.trim().replace(/[.]?$/, ".");
  return `${sentence}${what} To lift it: ${first.closes}; or waive it under “Holds” on the page “Does the record match the camera?”.${more}`;
}

/** A demand, an invoice and an agreement rest on a split that is final. */
export const ASKS_FOR_MONEY: readonly Deed[] = [
  { stop: "final-split", stretch: null },
  { stop: "demand", stretch: null },
];

/** A branch takes up a foot to each side of its station, or as far as that is uncertain. */
const LEAST: Cft = 100;

/** The stretch of the trunk at which a branch leaves it; a branch of a branch where its trunk branch does. */
export function placeOfTieIn(finding: TieInFinding, all: readonly TieInFinding[]): Stretch | null {
  const root = rootOf(finding, all);
  return root === null ? null : around(root.station, root.uncertainty);
}

/** What lies at a station that may be off by so much; null where the station is unknown. */
export function around(station: Cft | null, uncertainty: Cft | null): Stretch | null {
  if (station === null) return null;
  const half = Math.max(uncertainty ?? 0, LEAST);
  return { from: station - half, to: station + half };
}

function rootOf(finding: TieInFinding, all: readonly TieInFinding[]): TieInFinding | null {
  const passed = new Set<string>();
  let at: TieInFinding | undefined = finding;
  while (at !== undefined && at.tieIn.parentId !== null) {
    if (passed.has(at.tieIn.id)) return null;
    passed.add(at.tieIn.id);
    const parentId: string | null = at.tieIn.parentId;
    at = all.find(({ tieIn }) => tieIn.id === parentId);
  }
  return at ?? null;
}

/** True where something unwaived stops this kind of work or money anywhere on the line. */
export function isStopped(holds: readonly Hold[], stop: HoldStop): boolean {
  return holdsAgainst(holds, [{ stop, stretch: null }]).length > 0;
}
