import type { Metadata } from "next";
import { Empty } from "#app/_components/empty.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { awaitingResult } from "#lib/domain/notices/awaiting-result.ts";
import { lineFileOf } from "../../file.ts";
import { counted } from "../../names.ts";
import { ResultsForm } from "./results-form.tsx";

export const metadata: Metadata = { title: "Deliveries" };

/** Results of many deliveries in one press: select the letters, one date, one proof. */
export default async function DeliveriesPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report } = await lineFileOf(lineId);
  const open = awaitingResult(file);
  return (
    <>
      <PageHead
        asked="Deliveries"
        answer={
          open.length === 0
            ? "No delivery is waiting for a result"
            : `${counted(open.length, "delivery is", "deliveries are")} waiting for a result`
        }
      />
      {open.length === 0 ? (
        <Empty
          title="Letters recorded as sent show up here until their result is known."
          example="Delivered Thursday, November 19, with the tracking number of each"
        />
      ) : (
        <Section
          title="Record results"
          id="results"
          note="Select the letters that came to the same end on the same day. Tracking numbers can be filled in here; a tracking number or a proof shows that certified mail arrived."
        >
          <ResultsForm lineId={lineId} file={file} attempts={open} today={report.today} />
        </Section>
      )}
    </>
  );
}
