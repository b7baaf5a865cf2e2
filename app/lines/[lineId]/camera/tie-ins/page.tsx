import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { linePartOf } from "../../line-part.ts";
import { counted } from "../../names.ts";
import type { LinePart } from "../../part.ts";
import { Sightings, TieInsByHand } from "../sightings.tsx";

export const metadata: Metadata = { title: "Tie-ins" };

/** The tie-ins that the runs add up to, and which reading became which. */
export default async function TieInsPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ page?: string | string[] }>;
}) {
  const { lineId } = await params;
  const asked = (await searchParams).page;
  const part = await linePartOf(lineId);
  return (
    <>
      <PageHead asked="Which sightings are the same tie-in?" answer={answerOf(part)} />
      {part.report.tieIns.length === 0 ? (
        <None lineId={lineId} />
      ) : (
        <Sightings asked={asked} {...part} />
      )}
      <TieInsByHand {...part} />
    </>
  );
}

function answerOf({ file, report }: LinePart): string {
  const sightings = report.tieIns.reduce((sum, each) => sum + each.sightings.length, 0);
  if (report.tieIns.length === 0) return "No tie-ins yet";
  const from = `from ${counted(sightings, "sighting")} in ${counted(file.runs.length, "run")}`;
  return `${counted(report.tieIns.length, "tie-in")} ${sightings === 0 ? "entered by hand" : from}`;
}

function None({ lineId }: { readonly lineId: string }) {
  return (
    <Empty title="Tie-ins come from the log.">
      <p>
        <Link href={`/lines/${lineId}/camera/log`}>Enter what a run saw</Link>: each tie-in on it
        becomes one here, and sightings of the same one are joined.
      </p>
    </Empty>
  );
}
