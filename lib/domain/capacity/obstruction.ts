import type { Fault, Observation } from "../facts/run.ts";
import type { Obstruction } from "../findings/capacity.ts";
import type { StationedObservation } from "../findings/report.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import { capital } from "../say/capital.ts";
import { sectionLeft } from "./manning.ts";

const BLOCKING_FAULTS: Partial<Record<Fault, string>> = {
  roots: "roots",
  "protruding-tie-in": "connection sticking into pipe",
  collapsed: "collapse",
  deformed: "deformed pipe",
};

/**
 * What each thing seen in the pipe leaves of the cross-section, where its row or its note says how
 * much of the pipe it takes: `40 %`, or `2 in deep`. What stands in the row goes before the note.
 * Nothing is said of the others.
 */
export function obstructionsIn(
  observations: readonly Observation[],
  found: {
    readonly stations: readonly StationedObservation[];
    /** Inside diameter (inches) at a station; null where unknown. */
    readonly diameterAt: (station: Cft) => number | null;
  },
): Obstruction[] {
  const stations = new Map(found.stations.map((each) => [each.observationId, each.station]));
  return observations.flatMap((seen) => {
    const what = whatIs(seen);
    if (what === null) return [];
    const station = stations.get(seen.id) ?? null;
    const diameter = station === null ? null : found.diameterAt(station);
    const taken = takenBy(seen, diameter);
    if (taken === null) return [];
    const where = station === null ? "at a place with no station" : `at ${formatFeet(station)}`;
    const sentence = `${capital(what)} ${where}, noted as ${taken.noted}: ${taken.words}`;
    return [{ observationId: seen.id, station, what, left: taken.left, sentence }];
  });
}

function whatIs({ kind, fault }: Observation): string | null {
  if (kind === "deposit" || kind === "blockage") return kind;
  return kind === "fault" && fault !== null ? (BLOCKING_FAULTS[fault] ?? null) : null;
}

interface Taken {
  readonly noted: string;
  readonly left: readonly [number, number];
  readonly words: string;
}

function takenBy(
  { note, reduction }: Pick<Observation, "note" | "reduction">,
  diameter: number | null,
): Taken | null {
  if (reduction !== null) return byPercent(reduction);
  const percent = largest(note, /(\d{1,3}(?:\.\d+)?)\s*(?:%|per ?cent\b)/gi);
  if (percent !== null && percent <= 100) return byPercent(percent);
  const inches = largest(
    note,
    /(\d{1,2}(?:\.\d+)?)\s*(?:in|inch|inches|["”″])\s+(?:deep|high|thick)\b/gi,
  );
  return inches === null ? null : byHeight(inches, diameter);
}

/** Of several figures, as in `30 to 40 %`, the largest: the worst is what is asked for. */
function largest(note: string, pattern: RegExp): number | null {
  const figures = [...note.matchAll(pattern)].map(([, figure]) => Number(figure));
  return figures.length === 0 ? null : Math.max(...figures);
}

/** A percentage may be of the section or of the height; both readings are told. */
function byPercent(percent: number): Taken {
  const section = 1 - percent / 100;
  const height = sectionLeft(1, percent / 100);
  const worse = Math.min(section, height);
  const better = Math.max(section, height);
  const words =
    parts(worse) === parts(better)
      ? `${parts(section)} of the cross-section is left.`
      : `${parts(section)} of the cross-section is left if that is of the area, ${parts(height)} if it is of the height.`;
  return { noted: `${percent}%`, left: [worse, better], words };
}

function byHeight(inches: number, diameter: number | null): Taken | null {
  if (diameter === null || diameter <= 0) return null;
  const left = sectionLeft(diameter, inches);
  return {
    noted: `${inches} in`,
    left: [left, left],
    words: `${parts(left)} of the cross-section of a ${diameter} in pipe is left.`,
  };
}

function parts(share: number): string {
  return `${Math.round(share * 100)}%`;
}
