import type { Fitting, Material, Side } from "#lib/domain/facts/line.ts";
import type { PartyLanguage, Stake } from "#lib/domain/facts/party.ts";
import type { MeasuredFrom } from "#lib/domain/facts/record.ts";
import type { Degree, Fault, FootageFrom, ObservationKind } from "#lib/domain/facts/run.ts";
import type { Place, ScopeKind, Spread } from "#lib/domain/facts/scope.ts";
import type { ControlResult, TestResult } from "#lib/domain/facts/test.ts";

type Synonyms<T extends string> = Partial<Record<T, readonly string[]>>;

// What people type and spreadsheets write for a choice; only what means that one thing.

export const MATERIAL_SYNONYMS: Synonyms<Material> = {
  "vitrified-clay": ["clay", "clay pipe", "vcp", "vit clay", "terra cotta"],
  concrete: ["conc", "concrete pipe", "rcp"],
  "cast-iron": ["ci", "cast iron pipe"],
  "ductile-iron": ["di", "dip", "ductile iron pipe"],
  polyethylene: ["hdpe", "pe"],
  "bituminous-fibre": ["orangeburg", "bituminous fibre", "bituminous fiber", "fiber pipe"],
  "asbestos-cement": ["ac", "acp", "transite"],
  "cured-in-place-liner": ["cipp", "liner"],
};

export const MEASURED_SYNONYMS: Synonyms<MeasuredFrom> = {
  main: ["main", "city main", "public main", "sewer main", "main connection", "tap"],
  "upper-end": [
    ...["house", "the house", "from house", "from the house", "house end", "building", "bldg"],
    ...["the building", "foundation", "upper end", "upstream end", "house cleanout"],
  ],
};

export const SIDE_SYNONYMS: Synonyms<Side> = {
  left: ["lt"],
  right: ["rt"],
  crown: ["crown", "top"],
};

export const FITTING_SYNONYMS: Synonyms<Fitting> = {
  wye: ["y"],
  tee: ["t"],
  "break-in": ["break-in", "break in", "hammer tap", "cut-in", "cut in"],
};

export const OBSERVATION_SYNONYMS: Synonyms<ObservationKind> = {
  "tie-in": ["tap", "lateral", "connection", "wye"],
  fault: ["fault"],
  deposit: ["deposit", "deposits", "grease", "sediment"],
  cleanout: ["clean out", "co"],
  remark: ["remark", "general observation"],
};

export const FAULT_SYNONYMS: Synonyms<Fault> = {
  crack: ["cracked", "cracks"],
  "offset-joint": ["displaced joint"],
  belly: ["sag"],
  "protruding-tie-in": [
    "protruding tie-in",
    "protruding tap",
    "intruding tap",
    "tap sticking into pipe",
  ],
  "worn-surface": ["worn surface", "worn", "corroded"],
};

export const DEGREE_SYNONYMS: Synonyms<Degree> = {
  slight: ["light", "minor", "small", "fine"],
  medium: ["moderate", "med"],
  severe: ["heavy", "bad", "major", "large"],
};

export const FOOTAGE_FROM_SYNONYMS: Synonyms<FootageFrom> = {
  access: ["access", "access point", "cleanout", "way in", "zeroed where it went in"],
  main: ["main", "main connection", "from the main", "at the main", "city main"],
};

export const LANGUAGE_SYNONYMS: Synonyms<PartyLanguage> = {
  es: ["español", "espanol"],
  both: ["bilingual", "english and spanish", "english spanish"],
};

export const STAKE_SYNONYMS: Synonyms<Stake> = {
  candidate: ["candidate", "maybe", "maybe connected", "perhaps connected"],
  crossed: ["crossed", "only crossed"],
  neighbour: ["neighbour"],
};

export const TEST_RESULT_SYNONYMS: Synonyms<TestResult> = {
  positive: ["positive"],
  "not-seen": ["negative", "nothing seen"],
  inconclusive: ["inconclusive", "cannot tell"],
};

export const CONTROL_SYNONYMS: Synonyms<ControlResult> = {
  "not-run": ["no control"],
  negative: ["negative", "nothing seen"],
  positive: ["positive", "seen too"],
};

export const PLACE_SYNONYMS: Synonyms<Place> = {
  point: ["point"],
  stretch: ["section", "stretch", "over a stretch"],
  branch: ["branch"],
  general: ["whole job"],
};

export const SPREAD_SYNONYMS: Synonyms<Spread> = {
  "by-placed-cost": ["prorated", "by placed cost", "by cost"],
};

export const SCOPE_KIND_SYNONYMS: Synonyms<ScopeKind> = {
  "dig-and-replace": ["open cut", "excavate and replace"],
  line: ["lining", "liner", "cipp"],
  burst: ["bursting", "pipe bursting"],
  cap: ["plug"],
  clean: ["jetting", "jet"],
  clear: ["root cutting", "cut roots"],
  reconnect: ["reinstate", "reinstatement"],
  restore: ["restoration", "paving", "surface restoration"],
  "permit-fee": ["permits", "fee", "fees", "permit fee", "inspection", "permit and inspection"],
  other: ["general", "mobilization", "traffic control"],
};
