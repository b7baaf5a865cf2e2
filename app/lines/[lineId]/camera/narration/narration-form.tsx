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
    <ActionForm action={addNarrationAction.bind(null, lineId, run.id)} label="What was said">
      <SpokenText />
      <div>
        <SubmitButton pendingWord="Reading …">Draft the log from it</SubmitButton>
      </div>
    </ActionForm>
  );
  if (!first)
    return (
      <details className="screen-only">
        <summary>Bring in more that was said on {run.name}</summary>
        {form}
      </details>
    );
  return (
    <Section title="Bring in what was said">
      <Empty
        title="Paste the words that the technician spoke while the camera ran."
        example="0:20 twenty-four one, there’s a tap at nine o’clock, looks like four inch clay, not on the card."
      >
        <p>
          With times, a row gets its place in the recording, and what was said between two distances
          is placed by time. Words without times do too.
        </p>
      </Empty>
      {form}
    </Section>
  );
}
