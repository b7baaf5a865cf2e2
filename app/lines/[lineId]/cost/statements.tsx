import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { statementPlaces } from "#lib/domain/paper/statement.ts";
import { propertyName } from "../names.ts";
import { decideStatementsAction, printStatementsAction } from "./statement-actions.ts";

/** A statement for each property with a share; nothing before a rule is chosen. */
export function Statements({
  lineId,
  file,
  work,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly work: boolean;
}) {
  const places = statementPlaces(file);
  if (places.length === 0) return null;
  return (
    <div className="screen-only">
      <Section
        title="Statements"
        id="statements"
        note="One sheet for each neighbour: the pipe, the part that they use, each piece of work, and their sum in steps for a pencil. A letter with the proposed split encloses it."
        actions={
          work ? (
            <JobButton
              start={printStatementsAction.bind(null, lineId, places)}
              working="Making the statements"
              paper={`/lines/${lineId}/notices/paper`}
            >
              All statements as PDF
            </JobButton>
          ) : undefined
        }
      >
        <ul className="plain-list">
          {places.map((propertyId) => (
            <li key={propertyId}>
              <Link href={`/lines/${lineId}/cost/statement/${encodeURIComponent(propertyId)}`}>
                {propertyName(file, propertyId)}
              </Link>
            </li>
          ))}
        </ul>
        {work ? <Decide lineId={lineId} file={file} /> : null}
      </Section>
    </div>
  );
}

function Decide({ lineId, file }: { readonly lineId: string; readonly file: LineFile }) {
  return (
    <ActionForm
      className="stack-tight"
      action={decideStatementsAction.bind(null, lineId)}
      label="What statements show"
    >
      <p className="muted">Every statement shows its own reader’s amount. Show beside it:</p>
      <label className="check">
        <input type="checkbox" name="others" defaultChecked={file.line.statementOthers} />
        <span>the other addresses’ amounts</span>
      </label>
      <label className="check">
        <input type="checkbox" name="rules" defaultChecked={file.line.statementRules} />
        <span>what the other rules would ask of the reader</span>
      </label>
      <div>
        <SubmitButton pendingWord="Saving …" quiet>
          Save this
        </SubmitButton>
      </div>
    </ActionForm>
  );
}
