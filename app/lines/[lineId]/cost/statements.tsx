import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { statementPlaces } from "#lib/domain/paper/statement.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { lineSeen } from "#lib/operations/save-line.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { propertyName } from "../names.ts";
import styles from "./cost.module.css";
import { decideStatementsAction, printStatementsAction } from "./statement-actions.ts";

/** A statement for each property with a share, and what all of them show. */
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
  const shares = latestSplit(file)?.shares ?? [];
  return (
    <Section
      title="Share statements"
      id="statements"
      note="One sheet per neighbor: the pipe, the part they use, each work item, and a step-by-step calculation they can check. A letter with the proposed split encloses it."
      actions={
        work ? (
          <JobButton
            start={printStatementsAction.bind(null, lineId, places)}
            working="Creating the statements"
            paper={`/lines/${lineId}/notices/paper`}
            main
          >
            All statements as PDF
          </JobButton>
        ) : undefined
      }
    >
      <div className="pair">
        <table className={`plain ${styles["steps"]}`}>
          <Heads of={["Statement", { num: "Share" }]} />
          <tbody>
            {places.map((propertyId) => (
              <tr key={propertyId}>
                <th scope="row">
                  <Link href={`/lines/${lineId}/cost/statements/${encodeURIComponent(propertyId)}`}>
                    {propertyName(file, propertyId)}
                  </Link>
                </th>
                <td className="num">
                  {formatCents(shares.find((each) => each.propertyId === propertyId)?.amount ?? 0)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
        {work ? <Decide lineId={lineId} file={file} /> : null}
      </div>
    </Section>
  );
}

function Decide({ lineId, file }: { readonly lineId: string; readonly file: LineFile }) {
  return (
    <ActionForm
      className="stack-tight screen-only"
      action={decideStatementsAction.bind(null, lineId)}
      label="Statement options"
    >
      <SeenField value={seenOf(lineSeen(file.line, ["statementOthers", "statementRules"]))} />
      <h3>Statement options</h3>
      <p className="muted">Every statement shows its own reader’s amount. Also show:</p>
      <label className="check">
        <input type="checkbox" name="others" defaultChecked={file.line.statementOthers} />
        <span>other addresses’ amounts</span>
      </label>
      <label className="check">
        <input type="checkbox" name="rules" defaultChecked={file.line.statementRules} />
        <span>the reader’s share under the other rules</span>
      </label>
      <div>
        <SubmitButton pendingWord="Saving…" quiet>
          Save
        </SubmitButton>
      </div>
    </ActionForm>
  );
}
