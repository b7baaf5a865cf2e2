import { PageHead } from "#app/_components/page-head.tsx";
import { householdNeeds } from "#lib/domain/party/household-needs.ts";
import { lineFileOf } from "../../file.ts";
import { counted } from "../../names.ts";
import { CallFirst } from "../calls-part.tsx";

export const metadata = { title: "Call first" };

export default async function CallsPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, may, user } = await lineFileOf(lineId);
  const needs = householdNeeds(file).length;
  return (
    <>
      <PageHead
        asked="Who must be called before water is shut off?"
        answer={
          needs === 0
            ? "No household has a water-service need on file"
            : `${counted(needs, "household")} to call first`
        }
      />
      <CallFirst
        lineId={lineId}
        file={file}
        today={report.today}
        caller={may("record-the-field") ? user.name : null}
      />
    </>
  );
}
