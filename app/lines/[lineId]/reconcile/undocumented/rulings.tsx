import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { Ruling, RulingKind } from "#lib/domain/facts/ruling.ts";
import type { TieInFinding } from "#lib/domain/findings/report.ts";
import { type RulingEffect, rulingEffects } from "#lib/domain/tiein/ruling-effects.ts";
import { ruledWords } from "#lib/domain/tiein/ruling-in-force.ts";
import { ruledSeen } from "#lib/operations/record-ruling.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { settledSeen } from "#lib/operations/settle-tie-in.ts";
import type { LinePart } from "../../part.ts";
import { optionsOf } from "../../terms.ts";
import { settleAction } from "../actions.ts";
import styles from "../reconcile.module.css";
import { recordRulingAction, withdrawRulingAction } from "./ruling-actions.ts";
import { RULING_CHOICES } from "./ruling-words.ts";

type RulingsProps = LinePart & { readonly finding: TieInFinding };

/** What the authority ruled on a tie-in, what follows, and the form to record a ruling. */
export function Rulings({ finding, ...part }: RulingsProps) {
  const { file, mayFile } = part;
  const [effect] = rulingEffects(file, [finding]);
  const earlier = file.rulings.filter(
    ({ tieInId, id }) => tieInId === finding.tieIn.id && id !== effect?.ruling.id,
  );
  if (!effect) return mayFile ? <RulingForm finding={finding} {...part} /> : null;
  return (
    <div className="stack-tight">
      <h4>Ruling by the authority on {finding.tieIn.label}</h4>
      <InForce effect={effect} finding={finding} {...part} />
      {earlier.map((ruling) => (
        <p key={ruling.id} className="small muted">
          Earlier: it {ruledWords(ruling)}.
        </p>
      ))}
      {mayFile ? <RulingForm finding={finding} {...part} /> : null}
    </div>
  );
}

function InForce({
  effect,
  finding,
  lineId,
  file,
  mayFile,
}: RulingsProps & { readonly effect: RulingEffect }) {
  const { ruling, done, asks, holds } = effect;
  const paper = file.uploads.find(({ id }) => id === ruling.uploadId);
  return (
    <>
      <p>
        {done ? <span className="tag tag-done">complete</span> : null} It {ruledWords(ruling)}.
      </p>
      {asks === null ? null : <p>{asks}.</p>}
      {holds ? <p className="small">Until then, no lining past it and no final split.</p> : null}
      <p className="small muted">
        {paper ? (
          <>
            Source: <a href={`/lines/${lineId}/uploads/${paper.id}`}>{paper.name}</a>.{" "}
          </>
        ) : null}
        {ruling.note === "" ? null : `${ruling.note} `}
        Recorded by {ruling.enteredBy}.
      </p>
      {mayFile && !done && DONE_WORDS[ruling.kind] !== undefined ? (
        <DoneForm lineId={lineId} finding={finding} words={DONE_WORDS[ruling.kind] ?? ""} />
      ) : null}
      {mayFile ? <WithdrawForm lineId={lineId} ruling={ruling} /> : null}
    </>
  );
}

/** Rulings that are done once a person says that the branch is off. */
const DONE_WORDS: Partial<Record<RulingKind, string>> = {
  disconnect: "Disconnected",
  "own-connection": "Now has its own connection",
  cap: "Capped",
};

function DoneForm({
  lineId,
  finding: { tieIn },
  words,
}: {
  readonly lineId: string;
  readonly finding: TieInFinding;
  readonly words: string;
}) {
  return (
    <details>
      <summary>{words}</summary>
      <ActionForm
        action={settleAction.bind(null, lineId)}
        className={styles["decide"] ?? ""}
        label={`${words}: ${tieIn.label}`}
      >
        <input type="hidden" name="tieInId" value={tieIn.id} />
        <SeenField value={seenOf(settledSeen(tieIn))} />
        <input type="hidden" name="kind" value="capped-stub" />
        <input type="hidden" name="propertyId" value={tieIn.propertyId ?? ""} />
        <input type="hidden" name="inactive" value="yes" />
        <Field
          label="How, when and who witnessed it"
          name="words"
          rows={2}
          required
          hint="It is then removed from the flow and the split."
        />
        <div>
          <SubmitButton pendingWord="Saving …">{words}</SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

function WithdrawForm({ lineId, ruling }: { readonly lineId: string; readonly ruling: Ruling }) {
  return (
    <details>
      <summary>This ruling was entered in error</summary>
      <ActionForm
        action={withdrawRulingAction.bind(null, lineId)}
        className={styles["decide"] ?? ""}
        label="Delete the ruling"
      >
        <input type="hidden" name="rulingId" value={ruling.id} />
        <Field label="Reason" name="reason" required />
        <div>
          <SubmitButton quiet pendingWord="Deleting …">
            Delete
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

function RulingForm({ finding: { tieIn }, lineId, file, report }: RulingsProps) {
  const papers = file.uploads.map(({ id, name }) => ({ value: id, label: name }));
  return (
    <details>
      <summary>
        Record a ruling by the authority<span className="hidden"> on {tieIn.label}</span>
      </summary>
      <ActionForm
        action={recordRulingAction.bind(null, lineId)}
        reset
        className={styles["across"] ?? ""}
        label={`Ruling on ${tieIn.label}`}
      >
        <input type="hidden" name="tieInId" value={tieIn.id} />
        <SeenField value={seenOf(ruledSeen(file, tieIn.id))} />
        <Choice
          label="Ruling"
          name="kind"
          required
          options={[{ value: "", label: "select" }, ...optionsOf(RULING_CHOICES)]}
        />
        <Field
          label="Decided by"
          name="decidedBy"
          required
          defaultValue={file.authority?.name ?? ""}
        />
        <Field
          label="Date"
          name="decidedOn"
          type="date"
          required
          max={report.today}
          defaultValue={report.today}
        />
        <Field label="Due date" name="dueOn" type="date" hint="Blank if none given" />
        <Field
          label="Reference"
          name="reference"
          example="case 26-114"
          hint="Case, letter or section. Required to accept a tie-in or correct the record."
        />
        {papers.length === 0 ? null : (
          <Choice
            label="Document"
            name="uploadId"
            options={[{ value: "", label: "none on file" }, ...papers]}
          />
        )}
        <Field label="Note" name="note" rows={2} />
        <div>
          <SubmitButton pendingWord="Saving …">Save ruling</SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}
