import type { LetterKind } from "../facts/notice.ts";
import { visitDaysOf } from "./body-visit.ts";
import type { LetterFacts } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";
import type { LetterWords } from "./words-en.ts";

type CautionKey = keyof LetterWords["caution"];

/**
 * The cautions that each kind of letter carries, always and in this order. They are part of
 * composing a letter and no part of what an office can edit, so that none can be left out.
 */
const CAUTIONS: Record<LetterKind, readonly CautionKey[]> = {
  finding: ["records", "cap", "gas", "sewage"],
  "tie-in-inquiry": ["records", "cap", "gas", "official"],
  "test-visit": ["dye", "smoke", "gas"],
  "proposed-split": ["proposal", "records"],
  "entry-consent": ["enterOnly", "trench", "sewage", "records"],
  "joint-agreement": ["official", "records"],
  "work-start": ["trench", "sewage", "gas", "drains"],
  "drain-pause": ["drains", "sewage", "gas", "trench"],
  spill: ["sewage", "gas"],
  "share-demand": ["official", "records"],
  "authority-response": ["records", "official"],
  "close-out": ["official", "records", "gas"],
  "drains-back": ["sewage"],
  meeting: ["official"],
  "landlord-entry": ["official"],
  "street-parking": ["trench"],
  "change-order": ["official"],
  "invoice-cover": ["official"],
};

/**
 * The cautions of one letter; with the one on a crossing where the camera could not rule it out, and
 * without the one on smoke where the visit is a planned day of dye tests.
 */
export function cautionBlocks(facts: LetterFacts): LetterBlock[] {
  const { file, report, notice, words } = facts;
  const day = words.day(report.today);
  const dyeOnly = visitDaysOf(facts).length > 0;
  const keys = CAUTIONS[notice.kind].flatMap((key): CautionKey[] => {
    if (key === "smoke" && dyeOnly) return [];
    const crossed = file.runs.some((run) => run.crossingSeen !== "no");
    return key === "gas" && crossed ? ["gas", "gasSeen"] : [key];
  });
  return keys.map((key) => {
    if (key === "records") {
      const { title, text } = words.caution.records;
      return { kind: "caution", title, text: text(day) };
    }
    const { title, text } = words.caution[key];
    return { kind: "caution", title, text };
  });
}
