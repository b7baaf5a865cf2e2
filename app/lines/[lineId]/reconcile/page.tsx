import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { db } from "#app/db.ts";
import { getRevisions } from "#db/queries/revision.ts";
import { lineFileOf } from "../file.ts";
import type { LinePart } from "../part.ts";
import { QuestionHead } from "../question-head.tsx";
import { Alternatives } from "./alternatives.tsx";
import { Entries } from "./entries.tsx";
import { Holds } from "./holds-part.tsx";
import { LineUp } from "./line-up.tsx";
import { Decided, Proposals } from "./pairings.tsx";
import { Standings } from "./standings.tsx";
import { Undocumented } from "./undocumented.tsx";

export const metadata = { title: "Does the record match the camera?" };

export default async function AgreePage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ look?: string | string[]; in?: string | string[] }>;
}) {
  const { lineId } = await params;
  const asked = await searchParams;
  const look = typeof asked.look === "string" ? asked.look : null;
  const { file, report, may } = await lineFileOf(lineId);
  const part: LinePart = {
    lineId,
    file,
    report,
    revisions: getRevisions(db(), lineId),
    mayRecord: may("record-the-field"),
    mayFile: may("work-the-file"),
  };
  return (
    <>
      <QuestionHead lineId={lineId} question="reconcile" />
      <NothingToCompare {...part} />
      <LineUp {...part} />
      <Alternatives look={look} {...part} />
      <Proposals {...part} />
      <Entries {...part} />
      <Undocumented {...part} />
      <Standings language={asked.in === "es" ? "es" : "en"} {...part} />
      <Decided {...part} />
      <Holds {...part} />
    </>
  );
}

function NothingToCompare({ lineId, file, report }: LinePart) {
  const noEntries = file.entries.length === 0;
  const noTieIns = report.tieIns.length === 0;
  if (!noEntries && !noTieIns) return null;
  return (
    <Empty
      title="There is nothing to compare yet."
      example="The card shows House 14 at 34.0 ft left; the camera saw T2 at 36.4 ft left. The card reads 2.4 ft short throughout, so they are taken for the same, and you accept or refuse that."
    >
      {noEntries ? (
        <p>
          First <Link href={`/lines/${lineId}/record`}>enter what is on record</Link>.
        </p>
      ) : null}
      {noTieIns ? (
        <p>
          {noEntries ? "Then" : "First"}{" "}
          <Link href={`/lines/${lineId}/camera`}>enter what the camera saw</Link>.
        </p>
      ) : null}
    </Empty>
  );
}
