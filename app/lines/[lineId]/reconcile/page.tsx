import { linePartOf } from "../line-part.ts";
import { QuestionHead } from "../question-head.tsx";
import { Holds } from "./holds.tsx";
import { NothingToCompare } from "./nothing-to-compare.tsx";
import { Statuses } from "./statuses.tsx";

export const metadata = { title: "Does the record match the camera?" };

export default async function ReconcilePage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ in?: string | string[]; holds?: string | string[] }>;
}) {
  const { lineId } = await params;
  const asked = await searchParams;
  const part = await linePartOf(lineId);
  return (
    <>
      <QuestionHead lineId={lineId} question="reconcile" />
      <NothingToCompare {...part} />
      <Statuses language={asked.in === "es" ? "es" : "en"} {...part} />
      <Holds asked={asked.holds} {...part} />
    </>
  );
}
