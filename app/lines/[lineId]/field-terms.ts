import type { LandKind } from "#lib/domain/facts/land.ts";
import type { EasementState, Material, PointKind, TieInKind } from "#lib/domain/facts/line.ts";
import { MATERIAL_WORDS } from "#lib/domain/facts/line-words.ts";
import type { Band, Standing } from "#lib/domain/facts/pairing.ts";
import type { PartyKind, PartyLanguage, Stake, UnitUse } from "#lib/domain/facts/party.ts";
import type { MeasuredFrom, RecordKind } from "#lib/domain/facts/record.ts";
import type {
  AnchorKind,
  Answer,
  Degree,
  Direction,
  FootageFrom,
  ObscuredBy,
  RunEnd,
  SelfLeveling,
} from "#lib/domain/facts/run.ts";
import type { ControlResult, TestKind } from "#lib/domain/facts/test.ts";
import { MATERIAL_SYNONYMS } from "./synonyms.ts";
import { type Choice, optionsOf } from "./terms.ts";

// The closed sets of people, record, camera and tests, in the words of the trade.

export const STAKE_WORDS: Record<Stake, string> = {
  connected: "connected",
  candidate: "possibly connected",
  crossed: "crossed only",
  neighbour: "neighbor",
};

export const USE_WORDS: Record<UnitUse, string> = { dwelling: "dwelling", business: "business" };

export const PARTY_KIND_WORDS: Record<PartyKind, string> = {
  person: "person",
  firm: "company",
  trust: "trust",
  estate: "estate",
  association: "association",
  "public-body": "public agency",
  resident: "resident, name not known",
};

export const LANGUAGE_WORDS: Record<PartyLanguage, string> = {
  en: "English",
  es: "Spanish",
  both: "both",
  unknown: "unknown",
};

export const LAND_WORDS: Record<LandKind, string> = {
  lot: "a lot",
  "right-of-way": "street, right-of-way",
  "common-area": "common area",
  unknown: "unknown",
};

export const EASEMENT_WORDS: Record<EasementState, string> = {
  recorded: "recorded",
  none: "none",
  unknown: "unknown",
};

export const RECORD_KIND_WORDS: Record<RecordKind, string> = {
  card: "card",
  drawing: "drawing",
  permit: "permit",
  "as-built": "as-built",
  other: "other",
};

export const MEASURED_WORDS: Record<MeasuredFrom, string> = {
  main: "the main",
  "upper-end": "the upper end",
  unknown: "unknown",
};

export const DIRECTION_WORDS: Record<Direction, string> = {
  upstream: "upstream",
  downstream: "downstream",
};

export const FOOTAGE_FROM_WORDS: Record<FootageFrom, string> = {
  access: "where it went in",
  main: "the main",
};

export const SELF_LEVELING_WORDS: Record<SelfLeveling, string> = {
  unknown: "unknown",
  yes: "yes",
  no: "no, it turns",
};

export const ANSWER_WORDS: Record<Answer, string> = {
  no: "no",
  yes: "yes",
  "cannot-tell": "can’t tell",
};

export const ANCHOR_WORDS: Record<AnchorKind, string> = {
  "main-connection": "main connection",
  cleanout: "cleanout",
  "surface-locate": "surface locate",
  "material-change": "material change",
  "property-line": "property line",
  "settled-tie-in": "settled tie-in",
};

export const OBSCURED_WORDS: Record<ObscuredBy, string> = {
  "under-water": "under water",
  blocked: "blocked",
  "not-in-view": "not in view",
  "not-recorded": "not recorded",
};

export const RUN_END_WORDS: Record<RunEnd, string> = {
  unknown: "not recorded",
  "reached-main": "reached the main",
  "reached-upper-end": "reached the upper end",
  blocked: "blocked",
  "under-water": "under water",
  "turned-back": "turned back",
  "out-of-cable": "out of cable",
};

/** The most pressing first. */
export const DEGREE_WORDS: Record<Degree, string> = {
  slight: "slight",
  medium: "medium",
  severe: "severe",
};

export const POINT_WORDS: Record<PointKind, string> = {
  "right-of-way-line": "right-of-way line",
  curb: "curb",
  "property-line": "property line",
  cleanout: "cleanout",
  foundation: "foundation",
  manhole: "manhole",
  "easement-edge": "edge of easement",
};

export const TIE_IN_KIND_WORDS: Record<TieInKind, string> = {
  unknown: "not known yet",
  building: "building sewer",
  "yard-drain": "a yard drain",
  "roof-drain": "a roof drain",
  "cleanout-riser": "a cleanout riser",
  "capped-stub": "a capped stub",
  "old-septic-line": "an old septic line",
};

export const TEST_KIND_WORDS: Record<TestKind, string> = {
  dye: "dye",
  trace: "trace",
  smoke: "smoke",
  flow: "flow",
  excavation: "excavation",
  statement: "statement",
};

export const CONTROL_WORDS: Record<ControlResult, string> = {
  "not-run": "not run",
  negative: "not seen",
  positive: "seen",
};

export const STANDING_WORDS: Record<Standing, string> = {
  "on-record-and-seen": "on record and seen",
  "on-record-seen-elsewhere": "on record, at another place or side",
  "on-record-not-seen": "on record, not seen",
  "on-record-not-inspected": "on record, not inspected",
  "on-record-place-unclear": "on record, location unclear",
  undocumented: "undocumented",
  "accepted-by-ruling": "accepted by the authority",
  inactive: "proven inactive",
  "not-a-sanitary-branch": "not a sewer branch",
};

export const BAND_WORDS: Record<Band, string> = {
  same: "same place",
  likely: "likely, needs review",
  conflict: "conflict",
};

/** Materials as choices of a cell. */
export function materialChoices(): Choice<Material>[] {
  return optionsOf(MATERIAL_WORDS, MATERIAL_SYNONYMS);
}

/** A closed set as choices of a cell that may stay empty. */
export function withNone<T extends string>(
  choices: readonly Choice<T>[],
  none = "",
): Choice<T | "">[] {
  return [{ value: "", label: none }, ...choices];
}
