import type { LineFile } from "../../facts/line-file.ts";
import type { Report } from "../../findings/report.ts";
import { sayCount } from "../../say/count.ts";
import { atEvery, candidateStops, EVERYBODY } from "../addressed.ts";
import { heading, lead, list, paragraph, pictures, replyBy, table } from "../common.ts";
import type { LetterFacts } from "../facts.ts";
import { groundsOf } from "../grounds.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";
import { letterStrip } from "../letter-strip.ts";
import { longSide } from "../side-said.ts";
import { stillOf } from "../stills.ts";

/** Owners and occupants of the addresses that an undocumented tie-in may lead to are asked about it. */
export const TIE_IN_INQUIRY: LetterPlan = {
  title: {
    en: "A question about a sewer connection",
    es: "Una pregunta sobre una conexión de desagüe",
  },
  recipients: (file, report) => atEvery(file, candidateStops(file, report), EVERYBODY),
  about: "tie-in",
  named: "reminders",
  wantsReply: true,
  ownProse: true,
  body: inquiryBody,
  choices: ({ words }) => words.inquiry.choices,
  cautions: ["records", "cap", "gas", "official"],
  gaps: [hasTieIn],
  due: ownerUnknown,
};

function hasTieIn({ notice, asked }: LetterFacts): string | null {
  return notice.kind === "tie-in-inquiry" && asked === null
    ? "The letter does not say which tie-in it asks about."
    : null;
}

function ownerUnknown({ observations }: LineFile, { tieIns }: Report) {
  const open = tieIns.filter(
    ({ standing, propertyId }) => standing === "undocumented" && propertyId === null,
  );
  if (observations.length === 0 || open.length === 0) return null;
  return { because: `${sayCount(open.length, "tie-in")} with an unknown owner` };
}

/** Why this address is asked about one tie-in, and what would help to settle it. */
function inquiryBody(facts: LetterFacts): LetterBlock[] {
  const { words, asked } = facts;
  const opening =
    asked?.station == null
      ? words.inquiry.openingUnplaced
      : words.inquiry.opening(
          words.about(asked.station, asked.uncertainty ?? 0),
          longSide(facts, asked),
        );
  return [
    ...lead(words.lead.inquiry(facts.place, replyBy(facts))),
    paragraph(opening),
    paragraph(words.inquiry.why(words.list(groundsOf(facts)))),
    paragraph(words.inquiry.whyMatters),
    heading(words.inquiry.ask),
    ...list(words.inquiry.asks),
    heading(words.inquiry.facts),
    ...askedTable(facts),
    ...(asked?.station == null ? [] : [letterStrip(facts, "one")]),
    ...pictures(asked === null ? [] : stillOf(facts, asked)),
  ];
}

function askedTable(facts: LetterFacts): LetterBlock[] {
  const { asked, words } = facts;
  if (asked === null) return [];
  const { inquiry } = words;
  const { tieIn } = asked;
  return table(inquiry.factHead, [
    [
      inquiry.station,
      asked.station === null ? words.unknown : words.about(asked.station, asked.uncertainty ?? 0),
    ],
    [inquiry.side, longSide(facts, asked)],
    [inquiry.size, tieIn.diameter === null ? words.unknown : words.inches(tieIn.diameter)],
    [inquiry.material, words.material[tieIn.material]],
    [inquiry.evidence, inquiry.level[asked.level] ?? words.unknown],
  ]);
}
