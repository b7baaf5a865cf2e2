import type { ScopeKind } from "../facts/scope.ts";

/** What is done, in the middle of a sentence or a table. */
export const SCOPE_KIND_WORDS: Record<ScopeKind, string> = {
  unknown: "not set",
  "dig-and-replace": "dig and replace",
  "spot-repair": "spot repair (dug)",
  line: "line",
  burst: "burst",
  cap: "cap or plug",
  clear: "clear (cut inside the pipe)",
  clean: "clean (jet)",
  reconnect: "reconnect a branch",
  test: "camera or test",
  restore: "restore the surface",
  "permit-fee": "permit or fee",
  other: "other: nothing cut, lined, capped or dug",
};
