import { heading, list, paragraph } from "../paper/common.ts";
import type { LetterBlock } from "../paper/letter.ts";
import { crewSafety, type SafetyPart } from "../safety/crew-safety.ts";
import type { Sheet } from "./packet.ts";
import type { PacketInput } from "./packet-input.ts";
import { composed } from "./sheets-job.ts";

/** What the crew keeps to on this job, by the work in force; it is in every packet. */
export function safetySheet({ file, report }: PacketInput): Sheet {
  return composed("crew-safety", "Worker safety on this job", [
    ...crewSafety(file, report).flatMap(partBlocks),
    paragraph(
      "Federal rules where a section is named, else common practice. A state may ask for more. The competent person on site decides, and anyone may stop the work.",
    ),
  ]);
}

function partBlocks({ title, why, rules }: SafetyPart): LetterBlock[] {
  return [
    heading(title),
    ...(why === "" ? [] : [paragraph(why)]),
    ...list(
      rules.map(({ words, citation }) => (citation === "" ? words : `${words} (${citation})`)),
    ),
  ];
}
