import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { type SplitRule, USUAL_UNKNOWN_SHARES } from "#lib/domain/facts/split.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { propertyName } from "../names.ts";
import { optionsOf, UNKNOWN_SHARE_WORDS } from "../terms.ts";
import { chooseSplitAction } from "./actions.ts";
import styles from "./cost.module.css";
import type { Particulars } from "./particulars.ts";

/** Chooses one of the rules that can be calculated; those that cannot be say what they need. */
export function ChooseForm({
  lineId,
  file,
  outcomes,
  particulars,
  asked,
  hasUnknown,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly outcomes: readonly SplitOutcome[];
  readonly particulars: Particulars;
  /** The rule that the address offers. */
  readonly asked: SplitRule | null;
  /** A connection has no known owner, so that its share is covered by the others or set aside. */
  readonly hasUnknown: boolean;
}) {
  const workable = outcomes.filter((outcome) => outcome.refusal === null);
  if (workable.length === 0) {
    return <p>No rule can be calculated yet; the comparison says what each one needs.</p>;
  }
  const inForce = latestSplit(file);
  const offered = asked ?? inForce?.rule ?? null;
  const { faultStation, payerId } = particulars;
  return (
    <ActionForm
      className={`screen-only ${styles["choose"]}`}
      action={chooseSplitAction.bind(null, lineId)}
      label="Choose a rule"
    >
      <SeenField value={seenOf(file.splits.length)} />
      <input
        type="hidden"
        name="fault"
        value={faultStation === null ? "" : plainFeet(faultStation)}
      />
      <input type="hidden" name="payer" value={payerId ?? ""} />
      <fieldset className="stack-tight">
        <legend>Rule</legend>
        {workable.map((outcome) => (
          <label key={outcome.choice.rule} className="check">
            <input
              type="radio"
              name="rule"
              value={outcome.choice.rule}
              defaultChecked={outcome.choice.rule === offered}
              required
            />
            <span>
              <span className="strong">
                {outcome.title}
                {particularWords(file, outcome, particulars)}
              </span>
              {outcome.standAlone === null || outcome.standAlone.passes ? null : (
                <span className="tag">stand-alone test not passed</span>
              )}
              <span className="muted small">{outcome.sentence}</span>
            </span>
          </label>
        ))}
        {workable.length === outcomes.length ? null : (
          <p className="muted small">
            Not ready:{" "}
            {outcomes
              .filter(({ refusal }) => refusal !== null)
              .map(({ title }) => title.toLowerCase())
              .join(", ")}
            . The comparison says what each one needs.
          </p>
        )}
      </fieldset>
      <div className="stack">
        <Field
          label="Why this rule"
          name="reason"
          rows={3}
          required
          hint="Printed in each neighbor’s letter with their amount."
          example="All owners asked for it at the meeting on November 20"
        />
        {hasUnknown ? (
          <Choice
            label="The share of an unknown owner is"
            name="unknownShares"
            defaultValue={inForce?.unknownShares ?? USUAL_UNKNOWN_SHARES}
            options={optionsOf(UNKNOWN_SHARE_WORDS)}
          />
        ) : null}
        <div>
          <SubmitButton pendingWord="Saving…">Choose this rule</SubmitButton>
        </div>
      </div>
    </ActionForm>
  );
}

function particularWords(file: LineFile, outcome: SplitOutcome, particulars: Particulars): string {
  const { faultStation, payerId } = particulars;
  if (outcome.choice.rule === "upstream-of-fault" && faultStation !== null) {
    return `, defect at ${formatFeet(faultStation)}`;
  }
  if (outcome.choice.rule === "single-payer" && payerId !== null) {
    return `: ${propertyName(file, payerId)}`;
  }
  return "";
}
