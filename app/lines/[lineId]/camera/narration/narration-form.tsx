import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Section } from "#app/_components/section.tsx";
import type { Run } from "#lib/domain/facts/run.ts";
import { addNarrationAction } from "./actions.ts";
import { SpokenText } from "./spoken-text.client.tsx";

/** Brings in what was said on a run. */
export function NarrationForm({
  lineId,
  run,
  first,
}: {
  readonly lineId: string;
  readonly run: Run;
  readonly first: boolean;
}) {
  const form = (
    <ActionForm
      action={addNarrationAction.bind(null, { lineId, runId: run.id })}
      label="Add a transcript"
    >
      <SpokenText />
      <div>
        <SubmitButton pendingWord="Reading …">Draft the log</SubmitButton>
      </div>
    </ActionForm>
  );
  if (!first)
    return (
      <details className="screen-only">
        <summary>Add another transcript of {run.name}</summary>
        {form}
      </details>
    );
  return (
    <Section title="Add a transcript">
      <Empty
        title="Paste what the technician said while running the camera."
        example="0:20 twenty-four one, there’s a tap at nine o’clock, looks like four inch clay, not on the card."
      >
        <p>
          With time stamps, each row is linked to the video and positions between two readings are
          interpolated. Text without time stamps works too.
        </p>
      </Empty>
      {form}
    </Section>
  );
}
