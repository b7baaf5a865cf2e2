import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { sayProperty } from "#lib/domain/party/say.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { BY_WORDS, GIVEN_WORDS } from "#lib/domain/statutory/paper-words.ts";
import { isOpenPaper, type PaperDue, whenWords } from "#lib/domain/statutory/papers.ts";
import { formatDate, formatFullDay } from "#lib/domain/time/format-day.ts";
import { partyName } from "../../names.ts";
import { decidePaperAction } from "./actions.ts";

interface GroupProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly group: readonly PaperDue[];
  readonly today: string;
  readonly may: boolean;
}

/** One paper: where it is written, and how far it has got with each person. */
export function PaperGroup({ lineId, file, group, today, may }: GroupProps) {
  const [first] = group;
  if (first === undefined) return null;
  const { paper } = first;
  return (
    <section className="stack-tight" aria-label={paper.title}>
      <h3>{paper.title}</h3>
      <p>
        {[
          capital(whenWords(paper)),
          paper.by === "any" ? "" : BY_WORDS[paper.by],
          GIVEN_WORDS[paper.given],
          paper.workWaits === 0
            ? ""
            : `work waits ${paper.workWaits} ${paper.waitUnit === "business-days" ? "business" : "calendar"} days`,
        ]
          .filter((part) => part !== "")
          .join("; ")}
        .{" "}
        <span className="muted">
          ({paper.citation === "" ? "source not on file" : paper.citation}, as of{" "}
          {formatDate(paper.asOf)})
        </span>
      </p>
      {paper.confirmedBy === "" ? (
        <p>
          <strong>
            {paper.text === ""
              ? "Its text is not entered yet."
              : "Its text is not confirmed: check it against the statute."}
          </strong>{" "}
          <Link href={`/office/authorities/${paper.authorityId}#papers`}>Office</Link>
        </p>
      ) : null}
      <Scroll>
        <table className="plain">
          <Heads of={["To", "By", "Status"]} />
          <tbody>
            {group.map((due) => (
              <tr key={`${due.partyId} ${due.propertyId}`}>
                <th scope="row">
                  {partyName(file, due.partyId)}
                  <br />
                  <span className="muted">{sayProperty(file, due.propertyId)}</span>
                </th>
                <td>
                  {due.by === null ? due.enter : formatFullDay(due.by)}
                  {due.by !== null && due.by < today && isOpenPaper(due) ? (
                    <strong> (overdue)</strong>
                  ) : null}
                </td>
                <td>
                  <Standing lineId={lineId} due={due} />
                  {may && due.state !== "given" ? <Decide lineId={lineId} due={due} /> : null}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}

function Standing({ lineId, due }: { readonly lineId: string; readonly due: PaperDue }) {
  const { state, notice, givenOn, late, wanting, decision } = due;
  const words = {
    open: "Not written",
    draft: wanting === "" ? "Drafted, not sent" : `Drafted again: ${wanting}`,
    "not-proven": `Sent, does not count yet: ${wanting}`,
    given: `Given ${givenOn === null ? "" : formatFullDay(givenOn)}${late ? ", late" : ""}`,
    "given-up": `Not given, decided by ${decision?.by ?? ""} on ${decision === null ? "" : formatDate(decision.on)}: ${decision?.reason ?? ""}`,
  }[state];
  if (notice === null || state === "given-up") return <span>{words}</span>;
  return <Link href={`/lines/${lineId}/notices/letter/${notice.id}`}>{words}</Link>;
}

function Decide({ lineId, due }: { readonly lineId: string; readonly due: PaperDue }) {
  const { paper, partyId, propertyId, state } = due;
  const place = { lineId, paperId: paper.id, partyId, propertyId };
  if (state === "given-up")
    return (
      <ActionForm
        action={decidePaperAction.bind(null, place)}
        label={`Give ${paper.title} after all`}
      >
        <input type="hidden" name="after" value="yes" />
        <SubmitButton pendingWord="Saving …" quiet>
          Give it after all
        </SubmitButton>
      </ActionForm>
    );
  return (
    <details className="screen-only">
      <summary className="small">Decide not to give it</summary>
      <ActionForm
        action={decidePaperAction.bind(null, place)}
        label={`Decide not to give ${paper.title}`}
        className="stack-tight"
      >
        <Field
          label="Reason"
          name="reason"
          required
          example="Our lawyer says it does not apply here"
        />
        <div>
          <SubmitButton pendingWord="Saving …" quiet>
            Record the decision
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}
