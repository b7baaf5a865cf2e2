import { isDug } from "../split/work-deeds.ts";
import { type Answer, type ConditionSite, mayBe, workIs } from "./answer.ts";

export function somethingDug(site: ConditionSite): Answer {
  return workIs(site, (item) => isDug(item, site.file), {
    isSo: (title) => `“${title}” digs`,
    isNone: "nothing is dug",
  });
}

export function pipeLined(site: ConditionSite): Answer {
  return workIs(site, (item) => mayBe(item, "line", site), {
    isSo: (title) => `“${title}” lines the pipe`,
    isNone: "nothing is lined",
  });
}

export function pipeBurst(site: ConditionSite): Answer {
  return workIs(site, (item) => mayBe(item, "burst", site), {
    isSo: (title) => `“${title}” bursts the pipe`,
    isNone: "nothing is burst",
  });
}

export function branchCapped(site: ConditionSite): Answer {
  return workIs(site, (item) => mayBe(item, "cap", site), {
    isSo: (title) => `“${title}” caps a branch`,
    isNone: "no branch is capped",
  });
}
