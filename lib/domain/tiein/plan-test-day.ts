import { timeOf } from "../calendar/time-of-day.ts";
import type { LineFile } from "../file/line-file.ts";
import type { Report, TieInFinding } from "../file/report.ts";
import { formatFeet } from "../line/station.ts";
import { streetOf } from "../party/stakeholders.ts";
import { candidatesFor } from "./candidates.ts";
import { dyeWait, LEAST_WAIT } from "./dye-wait.ts";
import { bearsDemand } from "./evidence.ts";
import type { TestDay, TestStop } from "./test-day.ts";

export const STOP_ORDERS = ["likeliest-first", "upstream-first"] as const;
export type StopOrder = (typeof STOP_ORDERS)[number];

interface DayAsked {
  readonly order: StopOrder;
  /** Minutes after midnight of the first dosing. */
  readonly startsAt: number;
}

export interface ProposedTestDay extends Pick<TestDay, "controlPropertyId" | "stops"> {
  /** Why it is planned so, a sentence each. */
  readonly reasons: readonly string[];
}

/** Green is seen best; red and blue are told from it in lamp light (common practice). */
export const COLOURS = ["green", "red", "blue"] as const;

/** To rinse, walk and set up at the next address: common practice. */
const TURNAROUND = 10;

/** More addresses than this for one tie-in do not fit a day. */
const MOST_ADDRESSES = 4;

const MORNING: DayAsked = { order: "likeliest-first", startsAt: 9 * 60 };

/** Undocumented branches whose owner is not shown yet: what a test day is for. */
export function tieInsToTest({ tieIns }: Pick<Report, "tieIns">): TieInFinding[] {
  return tieIns.filter(
    ({ standing, live, level, tieIn }) =>
      standing === "undocumented" && live && !bearsDemand(level, tieIn.ownerAccepted),
  );
}

/**
 * Proposes a day of dye tests: the control address first, then up to four candidates for each open
 * tie-in, each address dosed once while all its tie-ins are watched. One dosing at a time: the next
 * begins when the wait of the last is over and there was time to walk; each takes another colour than
 * the two before. No stop where nobody is a candidate.
 */
export function proposeTestDay(
  file: LineFile,
  report: Report,
  asked: Partial<DayAsked> = {},
): ProposedTestDay {
  const { order, startsAt } = { ...MORNING, ...asked };
  const open = tieInsToTest(report);
  const addresses = addressesFor(file, report, open).toSorted(BY[order]);
  if (addresses.length === 0) return { controlPropertyId: null, stops: [], reasons: [] };
  const control = controlFor(report, { open, not: addresses.map((each) => each.propertyId) });
  const waits = new Map(open.map((finding) => [finding.tieIn.id, dyeWait(finding, report)]));
  const watched = [...new Set(addresses.flatMap(({ tieInIds }) => tieInIds))];
  const first = control?.propertyId ? [{ propertyId: control.propertyId, tieInIds: watched }] : [];
  const stops = inTurn([...first, ...addresses], {
    startsAt,
    waitOf: (ids) => Math.max(LEAST_WAIT, ...ids.map((id) => waits.get(id)?.minutes ?? 0)),
  });
  return {
    controlPropertyId: control?.propertyId ?? null,
    stops,
    reasons: [
      controlWords(file, control, open),
      ORDER_WORDS[order],
      ...watched.flatMap((id) => waits.get(id)?.sentence ?? []),
      "Waits and paces are common practice, not measured on this line: make them longer where the pipe is slow.",
    ],
  };
}

interface Address {
  readonly propertyId: string;
  readonly tieInIds: readonly string[];
  readonly weight: number;
  readonly station: number;
}

const BY: Record<StopOrder, (one: Address, other: Address) => number> = {
  "likeliest-first": (one, other) => other.weight - one.weight || other.station - one.station,
  "upstream-first": (one, other) => other.station - one.station || other.weight - one.weight,
};

const ORDER_WORDS: Record<StopOrder, string> = {
  "likeliest-first": "Addresses go from the likeliest down: the day may end early.",
  "upstream-first": "Addresses go from the farthest upstream down.",
};

function addressesFor(file: LineFile, report: Report, open: readonly TieInFinding[]): Address[] {
  const found = new Map<string, Address>();
  for (const finding of open) {
    for (const { propertyId, weight } of candidatesFor(file, report, finding)
      .filter((each) => each.weight > 0)
      .slice(0, MOST_ADDRESSES)) {
      const old = found.get(propertyId);
      found.set(propertyId, {
        propertyId,
        tieInIds: [...(old?.tieInIds ?? []), finding.tieIn.id],
        weight: Math.max(weight, old?.weight ?? 0),
        station: Math.max(finding.station ?? -1, old?.station ?? -1),
      });
    }
  }
  return [...found.values()];
}

/** The settled tie-in nearest to a watched one, the downstream one of two as near. */
function controlFor(
  { tieIns }: Report,
  { open, not }: { open: readonly TieInFinding[]; not: readonly string[] },
): TieInFinding | null {
  const distance = ({ station }: TieInFinding) =>
    Math.min(
      ...open.map((each) =>
        station === null || each.station === null
          ? Number.MAX_SAFE_INTEGER
          : Math.abs(station - each.station),
      ),
    );
  return (
    tieIns
      .filter(
        ({ standing, live, decided, propertyId, station }) =>
          live &&
          decided &&
          propertyId !== null &&
          station !== null &&
          !not.includes(propertyId) &&
          standing !== "undocumented",
      )
      .toSorted(
        (one, other) =>
          distance(one) - distance(other) || (one.station ?? 0) - (other.station ?? 0),
      )[0] ?? null
  );
}

function controlWords(
  file: LineFile,
  control: TieInFinding | null,
  open: readonly TieInFinding[],
): string {
  if (control === null)
    return "No address whose tie-in is settled is near: without a control the evidence stays below level 5.";
  const property = file.properties.find(({ id }) => id === control.propertyId);
  const name = property ? streetOf(property.address) : "the control";
  const at = control.station === null ? "" : ` at ${formatFeet(control.station)}`;
  const labels = open.map(({ tieIn }) => tieIn.label).join(" and ");
  return `Control: ${name}, whose tie-in ${control.tieIn.label}${at} is settled. Its dye has to show there and not from ${labels}.`;
}

function inTurn(
  addresses: readonly Pick<Address, "propertyId" | "tieInIds">[],
  { startsAt, waitOf }: { startsAt: number; waitOf: (tieInIds: readonly string[]) => number },
): TestStop[] {
  let at = startsAt;
  return addresses.map(({ propertyId, tieInIds }, index) => {
    const waitMinutes = waitOf(tieInIds);
    const stop: TestStop = {
      propertyId,
      unitId: null,
      tieInIds,
      fixture: "Kitchen sink",
      colour: COLOURS[index % COLOURS.length] ?? COLOURS[0],
      startsAt: timeOf(at),
      waitMinutes,
    };
    at += waitMinutes + TURNAROUND;
    return stop;
  });
}
