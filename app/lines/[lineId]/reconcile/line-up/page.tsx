import { PageHead } from "#app/_components/page-head.tsx";
import { isLineUpOpen } from "#lib/domain/desk/reconcile-answer.ts";
import { linePartOf } from "../../line-part.ts";
import { NothingToCompare } from "../nothing-to-compare.tsx";
import { Alternatives } from "./alternatives.tsx";
import { splitSentence } from "./line-up-view.ts";
import { LineUp } from "./ways.tsx";

export const metadata = { title: "Line up the record" };

export default async function LineUpPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ look?: string | string[] }>;
}) {
  const { lineId } = await params;
  const asked = await searchParams;
  const look = typeof asked.look === "string" ? asked.look : null;
  const part = await linePartOf(lineId);
  const [first, rest] = splitSentence(part.report.alignment?.sentence ?? "Nothing to line up yet");
  return (
    <>
      <PageHead
        asked="How does the record line up with the camera?"
        answer={first}
        closes={isLineUpOpen(part.report) ? "Accept or reject the shift" : null}
      >
        {rest === "" ? null : <p>{rest}</p>}
      </PageHead>
      <NothingToCompare {...part} />
      <LineUp {...part} />
      <Alternatives look={look} {...part} />
    </>
  );
}
