import Link from "next/link";
import type { TieInFinding } from "#lib/domain/findings/report.ts";
import type { LinePart } from "../../part.ts";
import { placeWords } from "../place-words.ts";

/** So many that are settled or on record stand there whole. */
export const FEW = 4;

/** Which tie-ins the address asks for. */
export interface TieInQuery {
  readonly page?: string | string[];
  readonly open?: string | string[];
}

/** Of many tie-ins only the one that the address names stands with its tests and forms. */
export function opened(
  findings: readonly TieInFinding[],
  asked: TieInQuery,
): readonly TieInFinding[] {
  if (findings.length <= FEW) return findings;
  return findings.filter(({ tieIn }) => tieIn.id === asked.open);
}

/** The others of many, to be opened one by one. */
export function Others({
  findings,
  asked,
  to,
  ...part
}: LinePart & {
  readonly findings: readonly TieInFinding[];
  readonly asked: TieInQuery;
  readonly to: string;
}) {
  if (findings.length <= FEW) return null;
  return (
    <ul>
      {findings
        .filter(({ tieIn }) => tieIn.id !== asked.open)
        .map((finding) => (
          <li key={finding.tieIn.id}>
            <Link href={`${pathOf(part)}?open=${encodeURIComponent(finding.tieIn.id)}#${to}`}>
              {finding.tieIn.label}, {placeWords(finding)}
            </Link>
          </li>
        ))}
    </ul>
  );
}

export function pathOf({ lineId }: Pick<LinePart, "lineId">): string {
  return `/lines/${lineId}/reconcile/undocumented`;
}
