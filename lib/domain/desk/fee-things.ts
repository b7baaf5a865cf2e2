import { feesOf } from "../application/fees.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import { formatCents } from "../money/format-cents.ts";
import { permitName } from "../permit/say.ts";
import { isNeverIssued, permitStateOf } from "../permit/steps.ts";
import type { DueThing } from "./answer.ts";

/** Permits of which something was paid, and whose fees come to more by now, or have to come back in part. */
export function feeThings(file: LineFile, { tieIns }: Report): Omit<DueThing, "lineId">[] {
  const connections = tieIns.filter(({ live }) => live).length;
  return file.permits.flatMap((permit) => {
    const state = permitStateOf(file, permit);
    const { paid, due, dueAtLeast } = feesOf(file, permit, connections);
    if (paid === 0 || dueAtLeast === 0 || isNeverIssued(state)) return [];
    const toPay = dueAtLeast > 0;
    const sentence = toPay
      ? `Fees of ${lowered(permitName(permit))}: ${due === null ? "at least " : ""}${formatCents(dueAtLeast)} left to pay`
      : `${formatCents(-dueAtLeast)} of ${lowered(permitName(permit))} has to come back from the authority`;
    return [
      {
        sentence,
        on: null,
        kind: toPay ? ("due" as const) : ("waiting" as const),
        waitsOn: toPay ? ("office" as const) : ("authority" as const),
        question: "authority" as const,
        where: "authority/fees",
      },
    ];
  });
}

function lowered(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
