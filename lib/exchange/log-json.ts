import type { Direction } from "#lib/domain/facts/run.ts";
import type { Cft } from "#lib/domain/length/station.ts";
import type { Draft, DraftLog } from "#lib/domain/narration/log/draft.ts";
import { sideOf } from "#lib/domain/run/convert.ts";

function feet(length: Cft | null): number | null {
  return length === null ? null : length / 100;
}

/**
 * A drafted log as plain JSON for other programs: lengths in feet, sizes in inches, times in seconds
 * of the recording; null where the talk does not tell. `counter` is on the run's footage, which
 * `measuredFrom` tells of; `side` is as seen looking upstream. Every row waits for a person.
 */
export function logJson(log: DraftLog, looks: Direction): object {
  return {
    units: { length: "feet", size: "inches", reduction: "percent of the bore", time: "seconds" },
    format: log.format,
    looks,
    measuredFrom: log.measuredFrom,
    mainCounter: feet(log.mainCounter),
    rows: log.drafts.map((row) => rowJson(row, looks)),
    gaps: log.gaps.map(({ fromCounter, toCounter, cause, quote }) => ({
      fromCounter: feet(fromCounter),
      toCounter: feet(toCounter),
      cause,
      quote,
    })),
    readings: log.readings.map(({ counter, videoSecond, quote }) => ({
      counter: feet(counter),
      second: videoSecond,
      quote,
    })),
    recordSaid: log.recordSaid.map(({ aboutRecord, fromMain, videoSecond }) => ({
      words: aboutRecord,
      fromMain: feet(fromMain),
      second: videoSecond,
    })),
    setAside: log.setAside,
    problems: log.problems,
  };
}

function rowJson(row: Draft, looks: Direction): object {
  return {
    kind: row.kind,
    fromMain: feet(row.fromMain),
    toFromMain: feet(row.toFromMain),
    counter: feet(row.counter),
    toCounter: feet(row.toCounter),
    reading: row.reading,
    uncertainty: feet(row.slack),
    clock: row.clock,
    side: sideOf(row.clock, looks),
    fault: row.fault,
    degree: row.degree,
    reduction: row.reduction,
    waterDepth: row.waterDepth,
    material: row.material,
    upstreamMaterial: row.upstreamMaterial,
    diameter: row.diameter,
    fitting: row.fitting,
    quote: row.quote,
    second: row.videoSecond,
    hedged: row.hedges.length > 0,
    aboutRecord: row.aboutRecord,
    note: row.note,
  };
}
