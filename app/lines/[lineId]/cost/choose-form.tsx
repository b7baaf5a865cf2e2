import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { USUAL_UNKNOWN_SHARES } from "#lib/domain/facts/split.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { propertyName } from "../names.ts";
import { optionsOf, UNKNOWN_SHARE_WORDS } from "../terms.ts";
import { chooseSplitAction } from "./actions.ts";
import type { Particulars } from "./particulars.ts";

/** Chooses one of the rules that can be worked out. */
export function ChooseForm({
  lineId,
  file,
  outcomes,
  particulars,
  hasUnknown,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly outcomes: readonly SplitOutcome[];
  readonly particulars: Particulars;
  /** A connection belongs to nobody yet, so that its share has to be carried or held apart. */
  readonly hasUnknown: boolean;
}) {
  const workable = outcomes.filter((outcome) => outcome.refusal === null);
  if (workable.length === 0) {
    return <p>No rule can be worked out yet. What each one lacks stands in the table above.</p>;
  }
  const inForce = latestSplit(file);
  const { faultStation, payerId } = particulars;
  return (
    <ActionForm
      className="stack screen-only"
      action={chooseSplitAction.bind(null, lineId)}
      label="Choose a rule"
      reset
    >
      <h3>{inForce === null ? "Choose a rule" : "Choose again"}</h3>
      <input
        type="hidden"
        name="fault"
        value={faultStation === null ? "" : plainFeet(faultStation)}
      />
      <input type="hidden" name="payer" value={payerId ?? ""} />
      <div className="form-grid">
        <Choice
          label="Rule"
          name="rule"
          required
          defaultValue={inForce?.rule ?? ""}
          options={[
            { value: "", label: "choose" },
            ...workable.map((outcome) => ({
              value: outcome.choice.rule,
              label: outcome.title + particularWords(file, outcome, particulars),
            })),
          ]}
        />
        {hasUnknown ? (
          <Choice
            label="The share of an unknown owner is"
            name="unknownShares"
            defaultValue={inForce?.unknownShares ?? USUAL_UNKNOWN_SHARES}
            options={optionsOf(UNKNOWN_SHARE_WORDS)}
          />
        ) : null}
      </div>
      <Field
        label="Why this rule"
        name="reason"
        rows={3}
        required
        hint="Every neighbour may read it in the letter with their amount."
        example="All owners asked for it at the meeting on November 20"
      />
      <div>
        <SubmitButton pendingWord="Choosing …">Choose this rule</SubmitButton>
      </div>
    </ActionForm>
  );
}

function particularWords(file: LineFile, outcome: SplitOutcome, particulars: Particulars): string {
  const { faultStation, payerId } = particulars;
  if (outcome.choice.rule === "upstream-of-fault" && faultStation !== null) {
    return `, fault at ${formatFeet(faultStation)}`;
  }
  if (outcome.choice.rule === "single-payer" && payerId !== null) {
    return `: ${propertyName(file, payerId)}`;
  }
  return "";
}
