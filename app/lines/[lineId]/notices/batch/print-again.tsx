import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Section } from "#app/_components/section.tsx";
import { TickAll } from "../draft-tools.client.tsx";
import { printAgainAction } from "./actions.ts";
import type { BatchPart } from "./part.ts";
import { Recipients } from "./recipients.tsx";
import { CodesTick } from "./send-batch.tsx";

/** Letters that are out, once more on paper. */
export function PrintAgain({ lineId, file, rows }: BatchPart) {
  return (
    <Section
      title="Print again"
      id="print-again"
      folded="letters that were sent, with new codes"
      note="No code is kept once it is printed. A letter that is printed again gets a new one, and the code on the earlier print stops working."
    >
      <ActionForm
        className="stack screen-only"
        action={printAgainAction.bind(null, lineId)}
        label="Print again"
      >
        <Recipients
          lineId={lineId}
          file={file}
          rows={rows}
          head={<TickAll name="notice" />}
          boxed={() => true}
        />
        <CodesTick />
        <div>
          <SubmitButton pendingWord="Starting …">Print selected again</SubmitButton>
        </div>
      </ActionForm>
    </Section>
  );
}
