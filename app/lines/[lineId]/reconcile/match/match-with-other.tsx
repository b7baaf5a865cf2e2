import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import type { TieInFinding } from "#lib/domain/findings/report.ts";
import { decideAction } from "../actions.ts";
import { tieInWords } from "../place-words.ts";
import { ReasonField } from "../reason-field.tsx";
import { ACCEPT_REASONS } from "../reasons.ts";
import styles from "../reconcile.module.css";

/** An entry matched with a tie-in that the person names. */
export function MatchWithOther({
  entryId,
  label,
  others,
  lineId,
  seen,
}: {
  readonly entryId: string;
  readonly label: string;
  readonly others: readonly TieInFinding[];
  readonly lineId: string;
  /** What was decided of the entry when the page was drawn. */
  readonly seen: string;
}) {
  return (
    <details>
      <summary>
        Match with another<span className="hidden">: {label}</span>
      </summary>
      <ActionForm
        action={decideAction.bind(null, lineId)}
        className={styles["decide"] ?? ""}
        label={`Match ${label} with another tie-in`}
      >
        <input type="hidden" name="entryId" value={entryId} />
        <input type="hidden" name="seen" value={seen} />
        <input type="hidden" name="state" value="accepted" />
        <Choice
          label="Match with"
          name="tieInId"
          options={[
            { value: "", label: "select a tie-in" },
            ...others.map((each) => ({ value: each.tieIn.id, label: tieInWords(each) })),
          ]}
        />
        <ReasonField presets={ACCEPT_REASONS} />
        <div>
          <SubmitButton quiet pendingWord="Matching …">
            Match
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}
