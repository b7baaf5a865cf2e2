import { PageHead } from "#app/_components/page-head.tsx";
import { isMatchOpen } from "#lib/domain/desk/reconcile-answer.ts";
import { linePartOf } from "../../line-part.ts";
import { counted } from "../../names.ts";
import type { LinePart } from "../../part.ts";
import { NothingToCompare } from "../nothing-to-compare.tsx";
import { Decided } from "./decided.tsx";
import { Explained, Unmatched, unmatchedEntries } from "./entries.tsx";
import { type MatchQuery, Proposals } from "./proposals.tsx";

export const metadata = { title: "Match entries and tie-ins" };

export default async function MatchPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<MatchQuery>;
}) {
  const { lineId } = await params;
  const asked = await searchParams;
  const part = await linePartOf(lineId);
  return (
    <>
      <PageHead asked="Which record entry is which tie-in?" answer={answerOf(part)} />
      <NothingToCompare {...part} />
      <Proposals asked={asked} {...part} />
      <Unmatched asked={asked.left} {...part} />
      <Decided {...part} />
      <Explained {...part} />
    </>
  );
}

/** `2 matches to review, 1 record entry without a match`. */
function answerOf({ file, report }: LinePart): string {
  if (!isMatchOpen(file, report))
    return file.pairings.length === 0 ? "No matches yet" : "All matches are decided";
  const proposed = report.proposals.length;
  const unmatched = unmatchedEntries({ file, report }).open.length;
  return [
    proposed === 0 ? "" : `${counted(proposed, "match", "matches")} to review`,
    unmatched === 0
      ? ""
      : `${counted(unmatched, "record entry", "record entries")} without a match`,
  ]
    .filter((words) => words !== "")
    .join(", ");
}
