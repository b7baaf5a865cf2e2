import { APPLICATION_FACTS } from "./application-facts.ts";
import type { FormFact } from "./fact.ts";
import { OFFICE_FACTS } from "./office-facts.ts";
import { PEOPLE_FACTS } from "./people-facts.ts";
import { WORK_FACTS } from "./work-facts.ts";

/** Every fact that a form may be filled in with, group by group. */
export const FORM_FACTS: readonly FormFact[] = [
  ...OFFICE_FACTS,
  ...APPLICATION_FACTS,
  ...PEOPLE_FACTS,
  ...WORK_FACTS,
];

const BY_KEY = new Map(FORM_FACTS.map((fact) => [fact.key, fact]));

export function formFact(key: string): FormFact | null {
  return BY_KEY.get(key) ?? null;
}
