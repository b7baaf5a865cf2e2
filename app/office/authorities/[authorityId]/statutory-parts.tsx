import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { Authority } from "#lib/domain/facts/authority.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import { STATUTORY_PAPER, type StatutoryPaper } from "#lib/domain/facts/statutory-paper.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { paperSeen } from "#lib/operations/save-paper-text.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { confirmPaperTextAction, savePaperTextAction } from "./paper-actions.ts";
import { PartsGrid } from "./parts-grid.client.tsx";
import { STATUTORY_COLUMNS } from "./statutory-columns.ts";

interface StatutoryPartsProps {
  readonly authority: Authority;
  readonly grid: {
    readonly authorityId: string;
    readonly base: number;
    readonly readOnly: boolean;
  };
  readonly day: string;
}

/** Papers that state law asks of the contractor, as rows, and the office's own text of each. */
export function StatutoryParts({ authority, grid, day }: StatutoryPartsProps) {
  const { statutoryPapers } = authority;
  const { authorityId: _whose, ...blank } = usualRow(STATUTORY_PAPER);
  const count = statutoryPapers.length;
  return (
    <Section
      title="Statutory papers"
      id="papers"
      folded={count === 0 ? "none" : `${count} ${count === 1 ? "row" : "rows"}`}
      note="What the law of the state asks of the contractor: notice to customer, preliminary notice, right to cancel. Enter each with its citation. Wyebook makes up no statutory text: enter yours below the table."
    >
      <div className="stack">
        <PartsGrid
          {...grid}
          part="statutoryPapers"
          label="Statutory papers"
          addWord="paper"
          rows={statutoryPapers}
          columns={STATUTORY_COLUMNS}
          blank={{ ...blank, asOf: day }}
          emptyWords="No papers yet. Example: WA, Notice to customer, to whoever ordered the work, before work begins, with the statute’s citation."
        />
        {statutoryPapers.map((paper) => (
          <PaperText key={paper.id} authorityId={authority.id} paper={paper} may={!grid.readOnly} />
        ))}
      </div>
    </Section>
  );
}

/** The office's text of a paper, and who compared it with the statute. */
function PaperText({
  authorityId,
  paper,
  may,
}: {
  readonly authorityId: string;
  readonly paper: StatutoryPaper;
  readonly may: boolean;
}) {
  const { id, title, text, textEs } = paper;
  const place = { authorityId, paperId: id };
  return (
    <details>
      <summary>
        Text of “{title}” <span className="muted">{standing(paper)}</span>
      </summary>
      <div className="stack">
        {may ? (
          <ActionForm
            action={savePaperTextAction.bind(null, place)}
            label={`Text of ${title}`}
            className="stack"
          >
            <SeenField value={seenOf(paperSeen(paper))} />
            <Field label="Text in English" name="text" rows={8} defaultValue={text} />
            <Field label="Text in Spanish" name="textEs" rows={8} defaultValue={textEs} />
            <div>
              <SubmitButton pendingWord="Saving …">Save the text</SubmitButton>
            </div>
          </ActionForm>
        ) : null}
        {may ? <Saved paper={paper} /> : null}
        {may ? null : (
          <>
            <p className="prewrap">{text === "" ? "No text yet." : text}</p>
            {textEs === "" ? null : <p className="prewrap">{textEs}</p>}
          </>
        )}
        {may && text !== "" && paper.confirmedBy === "" ? (
          <ActionForm
            action={confirmPaperTextAction.bind(null, place)}
            label={`Confirm the text of ${title}`}
            className="stack-tight"
          >
            <input type="hidden" name="text" value={text} />
            <input type="hidden" name="textEs" value={textEs} />
            <p>
              Until an admin confirms it, the paper says that its text has to be checked, and it
              does not go out.
            </p>
            <div>
              <SubmitButton pendingWord="Saving …" quiet>
                I compared this text with {paper.citation === "" ? "the statute" : paper.citation}
              </SubmitButton>
            </div>
          </ActionForm>
        ) : null}
      </div>
    </details>
  );
}

/** What is saved, where the form may say other words. */
function Saved({ paper: { text, textEs } }: { readonly paper: StatutoryPaper }) {
  if (text === "" && textEs === "") return null;
  return (
    <details>
      <summary>As saved</summary>
      <p className="prewrap">{text}</p>
      {textEs === "" ? null : <p className="prewrap">{textEs}</p>}
    </details>
  );
}

function standing({ text, confirmedBy, confirmedOn }: StatutoryPaper): string {
  if (text === "") return "not entered";
  if (confirmedBy === "") return "not confirmed";
  return `confirmed by ${confirmedBy}${confirmedOn === null ? "" : ` on ${formatDate(confirmedOn)}`}`;
}
