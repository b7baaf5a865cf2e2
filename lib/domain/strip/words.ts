import type { PointKind } from "../facts/line.ts";
import type { Standing } from "../facts/pairing.ts";
import type { Fault, ObservationKind } from "../facts/run.ts";
import type { Holder } from "../findings/reach-finding.ts";
import type { CoverageSpan } from "../findings/report.ts";

/** Short words that fit on a drawing. */
export const POINT_LABELS: Record<PointKind, string> = {
  "right-of-way-line": "right-of-way line",
  curb: "curb",
  "property-line": "property line",
  cleanout: "cleanout",
  foundation: "foundation",
  manhole: "manhole",
  "easement-edge": "easement edge",
};

export const FAULT_LABELS: Record<Fault, string> = {
  crack: "crack",
  broken: "broken pipe",
  hole: "hole",
  "offset-joint": "offset joint",
  "open-joint": "open joint",
  roots: "roots",
  belly: "belly",
  deformed: "deformed",
  collapsed: "collapsed",
  infiltration: "infiltration",
  "protruding-tie-in": "connection sticking into pipe",
  "worn-surface": "worn pipe wall",
};

/** Things seen that are drawn beside faults, though they are none themselves. */
export const SEEN_LABELS: Partial<Record<ObservationKind, string>> = {
  blockage: "blockage",
  deposit: "debris",
  crossing: "something crosses the pipe",
  water: "water",
};

export const COVERAGE_LABELS: Record<CoverageSpan["state"], string> = {
  seen: "seen",
  "under-water": "under water",
  blocked: "blocked",
  "not-in-view": "not in view",
  "not-recorded": "not recorded",
  "not-inspected": "not inspected",
};

export const HOLDER_LABELS: Record<Holder, string> = {
  owners: "owners",
  authority: "the authority",
  unclear: "unclear",
};

export const STANDING_LABELS: Record<Standing, string> = {
  "on-record-and-seen": "on record and seen",
  "on-record-seen-elsewhere": "on record, at another place or side",
  "on-record-not-seen": "on record, not seen",
  "on-record-not-inspected": "on record, not inspected",
  "on-record-place-unclear": "on record, place not clear",
  undocumented: "undocumented",
  "accepted-by-ruling": "accepted by the authority",
  inactive: "inactive",
  "not-a-sanitary-branch": "not a sanitary branch",
};
