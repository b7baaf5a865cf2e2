import type { LineFile } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import { formatCents } from "../money/format-cents.ts";
import { feesOf } from "../permit/fees.ts";
import { isNeverIssued, permitName, permitStateOf } from "../permit/steps.ts";
import type { DueThing } from "./answer.ts";

/** Permits of which something was paid, and whose fees come to more by now, or have to come back in part. */
export function feeThings(file: LineFile, { tieIns }: Report): Omit<DueThing, "lineId">[] {
  const connections = tieIns.filter(({ live }) => live).length;
  return file.permits.flatMap((permit) => {
    const state = permitStateOf(file, permit);
    const { paid, due } = feesOf(file, permit, connections);
    if (paid === 0 || due === 0 || isNeverIssued(state)) return [];
    const sentence =
      due > 0
        ? `Fees of ${lowered(permitName(permit))}: ${formatCents(due)} left to pay`
        : `${formatCents(-due)} of ${lowered(permitName(permit))} has to come back from the authority`;
    return [
      {
        sentence,
        on: null,
        kind: due > 0 ? ("due" as const) : ("waiting" as const),
        waitsOn: due > 0 ? ("office" as const) : ("authority" as const),
        question: "authority" as const,
        where: "authority/fees",
      },
    ];
  });
}

function lowered(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
