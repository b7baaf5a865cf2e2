import { consentTable } from "../consent/table.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { SplitRule, SplitVersion } from "../facts/split.ts";
import type { Report } from "../findings/report.ts";
import { overdueAccounts, receivedWords } from "../ledger/sentence.ts";
import { formatCents } from "../money/format-cents.ts";
import { sayProperty } from "../party/say.ts";
import { forCount, sayAll, sayCount, sayParts } from "../say/count.ts";
import { sayList } from "../say/say-list.ts";
import { agreedScope, mustChooseOption } from "../sharing/scope-in-force.ts";
import { latestSplit } from "../split/latest-split.ts";
import { isStale } from "../split/stale.ts";
import { type Opening, PRESSING, type Reply, replyWith } from "./reply.ts";

const RULE_WORDS: Record<SplitRule, string> = {
  equal: "in equal shares",
  "per-unit": "by unit",
  "portion-used": "by portion used",
  "upstream-of-fault": "among those upstream of the defect",
  "reach-owner": "by owner of the section",
  weights: "by weights",
  "recorded-shares": "by recorded shares",
  "single-payer": "paid by one",
};

/** `$18,640.00 by portion used; 2 of 6 have agreed`. */
export function costAnswer(file: LineFile, report: Report): Reply {
  if (agreedScope(file).length === 0)
    return replyWith("No work is priced yet", [
      {
        closes: "Enter the scope of work with locations and prices",
        pressing: PRESSING.ordinary,
      },
    ]);
  if (mustChooseOption(file))
    return replyWith(`${file.options.length} repair options to compare`, [
      { closes: "Choose one and say why", where: "cost/options", pressing: PRESSING.ordinary },
    ]);
  const version = latestSplit(file);
  if (version === null) return unsplit(report);
  const agreed = agreementOn(file, report);
  const sentence = sayParts([
    `${formatCents(version.total)} ${RULE_WORDS[version.rule]}`,
    isStale(report, version) ? "the amounts are out of date" : "",
    agreedWords(agreed),
    agreed.superseded === 0 ? "" : `${agreed.superseded} signed for an earlier amount`,
    receivedWords(file),
  ]);
  return replyWith(sentence, openings(file, report, { version, agreed }));
}

function unsplit(report: Report): Reply {
  const total = report.splits.find(({ refusal }) => refusal === null)?.total;
  const sum = total === undefined ? "The work is priced" : formatCents(total);
  // A rule that can't be calculated can't be chosen: the comparison says what each one needs.
  const next =
    total === undefined
      ? { closes: "Enter what the rules need to be calculated", where: "cost/compare" }
      : { closes: "Compare the rules and choose one", where: "cost/choose" };
  return replyWith(`${sum}; no rule chosen yet`, [{ ...next, pressing: PRESSING.ordinary }]);
}

interface Agreed {
  readonly payers: readonly string[];
  readonly open: readonly string[];
  readonly refused: readonly string[];
  readonly superseded: number;
}

/** Which of the paying properties have agreed to their amount, by all who sign for them. */
function agreementOn(file: LineFile, report: Report): Agreed {
  const rows = consentTable(file, report).filter(({ cells }) => cells.pay.needed);
  const open = rows.filter(({ cells }) => !cells.pay.inHand);
  const says = (word: string) =>
    open.filter(({ cells }) => cells.pay.open.some(({ standing }) => standing === word));
  return {
    payers: rows.map(({ propertyId }) => propertyId),
    open: open.map(({ propertyId }) => propertyId),
    refused: says("refused").map(({ propertyId }) => propertyId),
    superseded: says("superseded-amount").length,
  };
}

function agreedWords({ payers, open }: Agreed): string {
  if (payers.length === 0) return "";
  const count = payers.length - open.length;
  if (count === 0) return "no one has agreed yet";
  if (open.length === 0)
    return payers.length === 1 ? "the payer has agreed" : `${sayAll(count)} have agreed`;
  return `${count} of ${payers.length} ${forCount(count, "has", "have")} agreed`;
}

function openings(
  file: LineFile,
  report: Report,
  { version, agreed }: { version: SplitVersion; agreed: Agreed },
): Opening[] {
  const open: Opening[] = overdueOpenings(file, report);
  const held = report.holds.filter(
    ({ waiver, stops }) => waiver === null && stops.includes("final-split"),
  );
  if (held.length > 0)
    open.push({
      closes: `The split cannot be final while ${sayCount(held.length, "hold")} ${forCount(held.length, "is", "are")} open: ${sayList(held.map(({ subjectLabel }) => subjectLabel))}`,
      pressing: PRESSING.stalls,
    });
  if (isStale(report, version))
    open.push({
      closes: "Update the split to the current facts",
      where: "cost/choose",
      pressing: PRESSING.soon,
    });
  if (agreed.open.length > 0) {
    const names = sayList(
      agreed.open.map((id) => sayProperty(file, id)),
      4,
    );
    open.push({
      closes: `Get the owners’ consent to pay for ${names}`,
      where: "notices/consents",
      pressing: PRESSING.ordinary,
    });
  }
  return open;
}

function overdueOpenings(file: LineFile, { today }: Report): Opening[] {
  const late = overdueAccounts(file, today);
  if (late.length === 0) return [];
  const sum = formatCents(late.reduce((all, { overdue }) => all + overdue, 0));
  const places = sayList(
    late.map(({ propertyId }) => sayProperty(file, propertyId)),
    4,
  );
  return [
    { closes: `Collect ${sum} past due: ${places}`, where: "cost/money", pressing: PRESSING.late },
  ];
}
