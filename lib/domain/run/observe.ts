import { remembered } from "../../remembered.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Observation, Run } from "../facts/run.ts";
import type { StationedObservation } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import type { PipeChange } from "../line/reaches.ts";
import { type Converter, converterFor, sidesOf, UNKNOWN_SIDES } from "./convert.ts";
import { readingOff } from "./reading-off.ts";

type RunFacts = Pick<LineFile, "runs" | "anchors">;

/** Every observation on the line's axis, as far as its run can tell; in the file's order. */
export function stationObservations(
  file: RunFacts & Pick<LineFile, "observations">,
): readonly StationedObservation[] {
  return stationed(file.observations, file.runs, file.anchors);
}

const stationed = remembered(
  (
    observations: LineFile["observations"],
    runs: LineFile["runs"],
    anchors: LineFile["anchors"],
  ): readonly StationedObservation[] => {
    const converters = convertersOf({ runs, anchors });
    return observations.map((seen) =>
      stationOne(seen, converters.get(seen.runId), readingOff(seen, observations)),
    );
  },
);

/** One converter for each run, by the run's id. */
export function convertersOf(
  file: RunFacts,
): Map<string, { readonly run: Run; readonly converter: Converter }> {
  return new Map(
    file.runs.map((run) => [run.id, { run, converter: converterFor(run, file.anchors) }]),
  );
}

/**
 * Where the camera saw the pipe change, for line/reaches.ts. A run that looks downstream notes the
 * pipe that lies upstream of the place too, as every observation of material does.
 */
export function pipeChanges(
  file: Pick<LineFile, "observations">,
  stations: readonly StationedObservation[],
): PipeChange[] {
  const placeOf = new Map(stations.map((each) => [each.observationId, each.station]));
  return file.observations.flatMap((seen) => {
    const station = placeOf.get(seen.id) ?? null;
    if (seen.kind !== "material" || station === null) return [];
    return [{ station, material: seen.material, diameter: seen.diameter }];
  });
}

function stationOne(
  seen: Observation,
  on: { readonly run: Run; readonly converter: Converter } | undefined,
  /** How far off the reading itself may be. */
  off: Cft,
): StationedObservation {
  const place = on?.converter.toStation(seen.counter) ?? null;
  const end = seen.toCounter === null ? null : (on?.converter.toStation(seen.toCounter) ?? null);
  return {
    observationId: seen.id,
    runId: seen.runId,
    station: place?.station ?? null,
    toStation: end?.station ?? null,
    uncertainty: place === null ? null : Math.max(place.uncertainty, off),
    ...(on ? sidesOf(seen.clock, on.run, on.converter) : UNKNOWN_SIDES),
  };
}
