import type { Correction } from "../facts/correction.ts";
import type { LineFile, Office } from "../facts/line-file.ts";
import { formatAddress } from "../party/address.ts";
import { formatPhone } from "../party/phone.ts";
import { streetOf } from "../party/stakeholders.ts";
import { type CorrectionRound, openItems, roundsOf } from "../permit/corrections.ts";
import { permitName } from "../permit/say.ts";
import { sayCount } from "../say/count.ts";
import type { Day } from "../time/day.ts";
import { table } from "./common.ts";
import type { LetterBlock } from "./letter.ts";
import { EN } from "./words-en.ts";

/** A sheet for the clerk’s counter, as data. In English, as the counter’s own letter is. */
export interface ClerkSheet {
  readonly title: string;
  readonly day: Day;
  readonly from: readonly string[];
  readonly to: readonly string[];
  /** What it is about: each with its label. */
  readonly about: readonly (readonly [label: string, words: string])[];
  readonly blocks: readonly LetterBlock[];
  readonly signed: readonly string[];
  readonly footer: string;
}

interface Around {
  readonly file: LineFile;
  readonly office: Office;
  readonly today: Day;
}

/**
 * The answer to a corrections letter, comment by comment, as it stands on file; null where no such
 * round is. What is not answered yet is said first, so that a draft is never taken for the answer.
 */
export function correctionsAnswer(
  { file, office, today }: Around,
  stepId: string,
): ClerkSheet | null {
  const permit = file.permits.find((each) =>
    roundsOf(file, each).some(({ step }) => step.id === stepId),
  );
  const round = permit && roundsOf(file, permit).find(({ step }) => step.id === stepId);
  if (permit === undefined || round === undefined) return null;
  const pages = [...new Set(round.items.flatMap(({ correction }) => pagesOf(correction)))].toSorted(
    (one, other) => one.localeCompare(other, "en", { numeric: true }),
  );
  const contact = [formatPhone(office.phone), office.email].filter((part) => part !== "");
  return {
    title: "Answers to plan review corrections",
    day: today,
    from: [office.name, formatAddress(office.address), contact.join(" · ")].filter(
      (line) => line !== "",
    ),
    to: [file.authority?.name ?? "", file.authority?.office ?? ""].filter((line) => line !== ""),
    about: [
      ["Permit", permitName(permit)],
      ["Line", `${file.line.name}: ${streets(file)}`],
      ["Corrections letter", `${EN.day(round.step.on)}, round ${round.number}`],
      [
        "Resubmitted",
        round.resubmittedOn === null ? "not yet (draft)" : EN.day(round.resubmittedOn),
      ],
      ["Changed sheets", pages.length === 0 ? "none" : EN.list(pages)],
      ["Prepared", EN.day(today)],
    ],
    blocks: [...draftCaution(round), ...answersTable(round)],
    signed: ["Name and signature", "Date"],
    footer: [office.name, permitName(permit), EN.day(today)].join(" · "),
  };
}

function streets({ properties }: LineFile): string {
  const served = properties.filter(({ stake }) => stake !== "neighbour");
  return EN.list(served.map(({ address }) => streetOf(address)));
}

function pagesOf({ changedPages }: Correction): string[] {
  return changedPages
    .split(/[,;]/)
    .map((page) => page.trim())
    .filter((page) => page !== "");
}

function draftCaution(round: CorrectionRound): LetterBlock[] {
  const open = openItems(round).length;
  if (round.items.length > 0 && open === 0) return [];
  return [
    {
      kind: "caution",
      title: "Draft",
      text:
        round.items.length === 0
          ? "No comments of this corrections letter are entered."
          : `${sayCount(open, "comment")} not answered.`,
    },
  ];
}

function answersTable({ items }: CorrectionRound): LetterBlock[] {
  const rows = items.map(({ correction }) => [
    correction.number,
    correction.sheet,
    correction.comment,
    answerWords(correction),
    correction.changedPages,
    correction.answeredBy,
  ]);
  return table(["No.", "Sheet", "Comment", "Answer", "Changed sheets", "Answered by"], rows);
}

function answerWords({ answer, notChanged }: Correction): string {
  const kept = notChanged.trim() === "" ? "" : `Not changed: ${notChanged.trim()}`;
  return [answer.trim(), kept].filter((part) => part !== "").join(" ") || "–";
}
