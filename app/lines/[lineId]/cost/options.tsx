import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { SplitChoice } from "#lib/domain/facts/split.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { optionInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { RULE_TITLES } from "#lib/domain/split/rule-words.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { LineGrid } from "../line-grid.tsx";
import { optionsOf } from "../terms.ts";
import { chooseOptionAction } from "./actions.ts";
import { OptionsTable } from "./options-table.tsx";
import { OPTION_COLUMNS } from "./scope-columns.ts";

/** Repair options: named, priced side by side with the split of each, one selected. */
export function Options({
  lineId,
  file,
  report,
  choice,
  work,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly choice: SplitChoice;
  readonly work: boolean;
}) {
  const several = file.options.length > 1;
  return (
    <div className="stack">
      <details className="screen-only" open={file.options.length < 2}>
        <summary>
          {file.options.length === 0 ? "Add options to compare" : "Options being compared"}
        </summary>
        <LineGrid
          lineId={lineId}
          table="options"
          columns={OPTION_COLUMNS}
          blank={{ title: "" }}
          addWord="option"
          label="Repair options"
          emptyWords="One option is enough. To compare several, add each here; then set each work item’s option in the scope of work."
        />
      </details>
      {several ? (
        <>
          <RuleChoice lineId={lineId} choice={choice} />
          <OptionsTable file={file} report={report} choice={choice} />
          {work ? <ChooseOption lineId={lineId} file={file} /> : null}
        </>
      ) : null}
    </div>
  );
}

function RuleChoice({ lineId, choice }: { readonly lineId: string; readonly choice: SplitChoice }) {
  return (
    <form action={`/lines/${lineId}/cost/options`} className="cluster cluster-end screen-only">
      <div className="field">
        <label htmlFor="options-rule">Split each by</label>
        <select id="options-rule" name="rule" className="input" defaultValue={choice.rule}>
          {optionsOf(RULE_TITLES).map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </div>
      <button type="submit" className="button">
        Show
      </button>
    </form>
  );
}

function ChooseOption({ lineId, file }: { readonly lineId: string; readonly file: LineFile }) {
  const inForce = optionInForce(file);
  const last = file.history.findLast((entry) => entry.action === "choose-option");
  return (
    <>
      {last === undefined ? null : (
        <p className="muted">
          {last.sentence} ({last.by})
        </p>
      )}
      <ActionForm
        className="stack screen-only"
        action={chooseOptionAction.bind(null, lineId)}
        label="Select a repair option"
        reset
      >
        <SeenField value={seenOf(file.line.optionId)} />
        <div className="form-grid">
          <Choice
            key={inForce}
            label={inForce === null ? "Use this option" : "Change the option"}
            name="optionId"
            defaultValue={inForce ?? ""}
            options={[
              { value: "", label: "not selected" },
              ...file.options.map(({ id, title }) => ({ value: id, label: title })),
            ]}
          />
          <Field
            label="Why this option"
            name="reason"
            required
            example="Two fewer digs in the alley, and all owners prefer it"
          />
        </div>
        <div>
          <SubmitButton pendingWord="Saving…">Use this option</SubmitButton>
        </div>
      </ActionForm>
    </>
  );
}
