import type { Metadata } from "next";
import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { lineSeen } from "#lib/operations/save-line.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { lineFileOf } from "../../file.ts";
import { LineGrid } from "../../line-grid.tsx";
import { saveWarrantyAction } from "./actions.ts";
import { BLANK_AREA, BLANK_SPILL_STEP, digAreaColumns, SPILL_COLUMNS } from "./columns.ts";

export const metadata: Metadata = { title: "Facts for letters" };

/** Facts that only letters need: what is not entered here is not promised there. */
export default async function LetterFactsPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, may } = await lineFileOf(lineId);
  return (
    <>
      <PageHead
        asked="Facts for letters"
        answer="Letters state what is entered here and promise nothing else"
      >
        <p className="screen-only">
          <Link href={`/lines/${lineId}/notices`}>Back to the letters</Link>
        </p>
      </PageHead>
      <Section
        title="Areas to enter or dig"
        id="areas"
        note="For the request to enter and dig: where, how large, which days, restoration, contact. The note stays in the office."
      >
        <LineGrid
          lineId={lineId}
          table="digAreas"
          columns={digAreaColumns(file)}
          blank={BLANK_AREA}
          addWord="area"
          emptyWords="No areas yet. Example: 14 Fennel Row, back yard along the alley fence, 20 × 4 ft, backfill and reseed."
          label="Areas to enter or dig"
        />
      </Section>
      <Section
        title="Days and hours"
        note="Of a visit without a planned test day, of the work, of a drain shutdown."
      >
        <p>
          <Link href={`/lines/${lineId}/schedule#events`}>
            Enter them with the event, under “What happens next?”
          </Link>
        </p>
      </Section>
      <Section
        title="Warranty"
        id="warranty"
        note="For the closeout letter. If blank, the letter says that no separate warranty is on file."
      >
        <WarrantyForm file={file} may={may("work-the-file")} />
      </Section>
      <Section
        title="Spill log"
        id="spill"
        note="What happened and when. Letters to neighbors and the report to the authority say this and no more."
      >
        <LineGrid
          lineId={lineId}
          table="spillSteps"
          columns={SPILL_COLUMNS}
          blank={BLANK_SPILL_STEP}
          addWord="step"
          emptyWords="No spill on file. Example: first noticed, December 3, 6:20 AM, alley behind 12 Fennel Row."
          label="Spill log"
        />
      </Section>
    </>
  );
}

function WarrantyForm({ file, may }: { readonly file: LineFile; readonly may: boolean }) {
  const { id, warrantyMonths, warrantyCovers, closedOn } = file.line;
  if (!may || closedOn !== null)
    return (
      <p>
        {warrantyMonths === null
          ? "No separate warranty."
          : `${warrantyMonths} months${warrantyCovers === "" ? "" : `, covering ${warrantyCovers}`}.`}
      </p>
    );
  return (
    <ActionForm action={saveWarrantyAction.bind(null, id)} label="Warranty" className="stack">
      <SeenField value={seenOf(lineSeen(file.line, ["warrantyMonths", "warrantyCovers"]))} />
      <div className="form-grid">
        <Field
          label="Warranty from final inspection"
          name="warrantyMonths"
          defaultValue={warrantyMonths ?? ""}
          inputMode="numeric"
          unit="months"
          width={4}
        />
        <Field
          label="Covers"
          name="warrantyCovers"
          defaultValue={warrantyCovers}
          example="the replaced pipe and its joints"
        />
      </div>
      <div>
        <SubmitButton pendingWord="Saving …">Save</SubmitButton>
      </div>
    </ActionForm>
  );
}
