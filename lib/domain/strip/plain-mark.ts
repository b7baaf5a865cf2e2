import type { Cft } from "../length/station.ts";
import type { StripMark } from "./drawing.ts";

/** A mark at a station of which nothing more is said than what it is called. */
export function plainMark(
  id: string,
  kind: StripMark["kind"],
  station: Cft,
  label = "",
): StripMark {
  return {
    id,
    kind,
    station,
    toStation: null,
    whisker: 0,
    side: "unknown",
    label,
    detail: "",
    loud: false,
    sentence: "",
  };
}
