import type { Metadata } from "next";
import { Empty } from "#app/_components/empty.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { awaitingResult } from "#lib/domain/notices/awaiting-result.ts";
import { isDeclarable } from "#lib/domain/paper/declaration.ts";
import { lineFileOf } from "../../file.ts";
import { counted } from "../../names.ts";
import { DeclarationForm } from "./declaration-form.tsx";
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
  const done = file.deliveries.filter(isDeclarable);
  const signed = done.filter(({ declaredUploadId }) => declaredUploadId !== null).length;
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
      {done.length === 0 ? null : (
        <Section
          title="Declaration of delivery"
          id="declaration"
          folded={`${counted(done.length, "delivery", "deliveries")}, ${signed} with a signed declaration`}
          note="What was done, by whom, when, how and to whom, with the photos and receipts attached, for the person who did it to sign on paper. The wording is a draft: whether your authority or court wants another, ask them."
        >
          <DeclarationForm lineId={lineId} file={file} attempts={done} today={report.today} />
        </Section>
      )}
    </>
  );
}
