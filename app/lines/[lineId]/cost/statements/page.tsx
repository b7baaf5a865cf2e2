import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { statementPlaces } from "#lib/domain/paper/statement.ts";
import { lineFileOf } from "../../file.ts";
import { QuestionHead } from "../../question-head.tsx";
import { Statements } from "../statements.tsx";

export const metadata: Metadata = { title: "Share statements" };

/** One sheet per neighbor, with a calculation that they can check. */
export default async function StatementsPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, may } = await lineFileOf(lineId);
  return (
    <>
      <QuestionHead lineId={lineId} question="cost" />
      {statementPlaces(file).length === 0 ? (
        <Empty title="No statements yet.">
          <p>
            <Link href={`/lines/${lineId}/cost/choose`}>Choose a rule</Link> first: a statement
            shows its amounts.
          </p>
        </Empty>
      ) : (
        <Statements lineId={lineId} file={file} work={may("work-the-file")} />
      )}
    </>
  );
}
