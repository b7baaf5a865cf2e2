import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import type { Ruling, RulingKind } from "#lib/domain/facts/ruling.ts";
import type { TieInFinding } from "#lib/domain/findings/report.ts";
import { type RulingEffect, rulingEffects } from "#lib/domain/tiein/ruling-effects.ts";
import { ruledWords } from "#lib/domain/tiein/ruling-in-force.ts";
import type { LinePart } from "../part.ts";
import { optionsOf } from "../terms.ts";
import { settleAction } from "./actions.ts";
import styles from "./reconcile.module.css";
import { recordRulingAction, withdrawRulingAction } from "./ruling-actions.ts";
import { RULING_CHOICES } from "./ruling-words.ts";

type RulingsProps = LinePart & { readonly finding: TieInFinding };

/** What the authority ruled on a tie-in, what follows, and the form to take a ruling down. */
export function Rulings({ finding, ...part }: RulingsProps) {
  const { file, mayFile } = part;
  const [effect] = rulingEffects(file, [finding]);
  const earlier = file.rulings.filter(
    ({ tieInId, id }) => tieInId === finding.tieIn.id && id !== effect?.ruling.id,
  );
  if (!effect && !mayFile) return null;
  return (
    <div className="stack-tight">
      <h4>What the authority ruled on {finding.tieIn.label}</h4>
      {effect ? (
        <InForce effect={effect} finding={finding} {...part} />
      ) : (
        <p className="muted">Nothing yet.</p>
      )}
      {earlier.map((ruling) => (
        <p key={ruling.id} className="small muted">
          Before: it {ruledWords(ruling)}.
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
        {done ? <span className="tag tag-done">done</span> : null} It {ruledWords(ruling)}.
      </p>
      {asks === null ? null : <p>{asks}.</p>}
      {holds ? <p className="small">Until then no lining across it, and no final split.</p> : null}
      <p className="small muted">
        {paper ? (
          <>
            Written in <a href={`/lines/${lineId}/uploads/${paper.id}`}>{paper.name}</a>.{" "}
          </>
        ) : null}
        {ruling.note === "" ? null : `${ruling.note} `}
        Entered by {ruling.enteredBy}.
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
  disconnect: "It is cut off now",
  "own-connection": "It has its own connection now",
  cap: "It is capped now",
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
        <input type="hidden" name="kind" value="capped-stub" />
        <input type="hidden" name="propertyId" value={tieIn.propertyId ?? ""} />
        <input type="hidden" name="inactive" value="yes" />
        <Field
          label="How and when it was done, and who saw it"
          name="words"
          rows={2}
          required
          hint="It then leaves whose flow passes here, and the split."
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
      <summary>This ruling was entered wrongly</summary>
      <ActionForm
        action={withdrawRulingAction.bind(null, lineId)}
        className={styles["decide"] ?? ""}
        label="Take the ruling out"
      >
        <input type="hidden" name="rulingId" value={ruling.id} />
        <Field label="What was wrong with it" name="reason" required />
        <div>
          <SubmitButton quiet pendingWord="Taking out …">
            Take it out
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
        Take down a ruling<span className="hidden"> on {tieIn.label}</span>
      </summary>
      <ActionForm
        action={recordRulingAction.bind(null, lineId)}
        reset
        className={styles["decide"] ?? ""}
        label={`Ruling on ${tieIn.label}`}
      >
        <input type="hidden" name="tieInId" value={tieIn.id} />
        <Choice
          label="What was ruled"
          name="kind"
          required
          options={[{ value: "", label: "choose" }, ...optionsOf(RULING_CHOICES)]}
        />
        <Field
          label="Who ruled it"
          name="decidedBy"
          required
          defaultValue={file.authority?.name ?? ""}
        />
        <Field
          label="On"
          name="decidedOn"
          type="date"
          required
          max={report.today}
          defaultValue={report.today}
        />
        <Field label="To be done by" name="dueOn" type="date" hint="Empty where no day was given" />
        <Field
          label="Where it is written"
          name="reference"
          example="case 26-114"
          hint="Case, letter or section. Needed to accept a tie-in or correct the record."
        />
        {papers.length === 0 ? null : (
          <Choice
            label="Its paper"
            name="uploadId"
            options={[{ value: "", label: "none on file" }, ...papers]}
          />
        )}
        <Field label="Note" name="note" rows={2} />
        <div>
          <SubmitButton pendingWord="Saving …">Take down the ruling</SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}
