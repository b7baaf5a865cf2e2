import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { Section } from "#app/_components/section.tsx";
import type { Office } from "#lib/domain/facts/line-file.ts";
import { replyDayFor } from "#lib/domain/paper/reply-day.ts";
import { counted } from "../../names.ts";
import { draftBatchAction } from "./actions.ts";
import type { BatchPart } from "./part.ts";

/** Drafts for everyone who has none yet, in one press. */
export function WriteRest({
  lineId,
  file,
  report,
  kind,
  office,
  count,
}: BatchPart & { readonly office: Office; readonly count: number }) {
  const replyBy = replyDayFor({ file, report, office }, kind);
  return (
    <Section
      title="Not written yet"
      id="write"
      note={
        <>
          To choose among them,{" "}
          <Link href={`/lines/${lineId}/notices/write?kind=${kind}`}>write them one by one</Link>.
        </>
      }
    >
      <ActionForm
        className="cluster cluster-end screen-only"
        action={draftBatchAction.bind(null, lineId)}
        label="Write the missing drafts"
      >
        <input type="hidden" name="kind" value={kind} />
        <Field
          label="Reply by"
          name="replyBy"
          type="date"
          min={report.today}
          {...(replyBy === null ? {} : { defaultValue: replyBy.on })}
        />
        <SubmitButton pendingWord="Writing …">{`Write ${counted(count, "draft")}`}</SubmitButton>
      </ActionForm>
    </Section>
  );
}
