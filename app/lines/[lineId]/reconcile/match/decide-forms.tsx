import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import type { ProposedPairing } from "#lib/domain/findings/report.ts";
import { decidedOf } from "#lib/operations/pairing-row.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { tieInName } from "../../names.ts";
import type { LinePart } from "../../part.ts";
import { decideAction } from "../actions.ts";
import { entryWords } from "../place-words.ts";
import { ReasonField } from "../reason-field.tsx";
import { ACCEPT_REASONS, fittingReason, fittingRefusal, REFUSE_REASONS } from "../reasons.ts";
import styles from "../reconcile.module.css";
import { MatchWithOther } from "./match-with-other.tsx";

/**
 * Accept, reject or match with another. The likelier answer stands open with the main button; where
 * record and camera contradict each other that is to reject, and accepting is folded away.
 */
export function DecideForms({
  proposal,
  lineId,
  file,
  report,
  quiet = false,
}: LinePart & {
  readonly proposal: ProposedPairing;
  /** No main button: it stands elsewhere on the page. */
  readonly quiet?: boolean;
}) {
  const { entryId, tieInId, band } = proposal;
  const { label } = entryWords(file, entryId, null);
  const seen = seenOf(decidedOf(file, entryId));
  const pair = { proposal, lineId, label, seen, name: tieInName(file, tieInId) };
  const others = report.tieIns.filter((each) => each.tieIn.id !== tieInId);
  const isConflict = band === "conflict";
  const both = (
    <span className="hidden">
      : {label} and {pair.name}
    </span>
  );
  return (
    <div className="stack-tight screen-only">
      {isConflict ? <RejectForm quiet={quiet} {...pair} /> : <AcceptForm quiet={quiet} {...pair} />}
      <details>
        <summary>
          {isConflict ? "Accept anyway" : "Not a match"}
          {both}
        </summary>
        {isConflict ? <AcceptForm quiet {...pair} /> : <RejectForm quiet {...pair} />}
      </details>
      {others.length === 0 ? null : (
        <MatchWithOther {...{ entryId, others, lineId, label, seen }} />
      )}
    </div>
  );
}

interface Pair {
  readonly proposal: ProposedPairing;
  readonly lineId: string;
  readonly label: string;
  readonly name: string;
  readonly seen: string;
  readonly quiet: boolean;
}

function AcceptForm({ proposal, lineId, label, name, seen, quiet }: Pair) {
  return (
    <ActionForm
      action={decideAction.bind(null, lineId)}
      className={styles["decide"] ?? ""}
      label={`${label} is ${name}`}
    >
      <input type="hidden" name="entryId" value={proposal.entryId} />
      <input type="hidden" name="seen" value={seen} />
      <input type="hidden" name="tieInId" value={proposal.tieInId} />
      <input type="hidden" name="state" value="accepted" />
      <ReasonField presets={ACCEPT_REASONS} chosen={fittingReason(proposal)} />
      <div>
        <SubmitButton quiet={quiet} pendingWord="Accepting …">
          Accept
          <span className="hidden">
            {" "}
            that {label} is {name}
          </span>
        </SubmitButton>
      </div>
    </ActionForm>
  );
}

function RejectForm({ proposal, lineId, label, name, seen, quiet }: Pair) {
  return (
    <ActionForm
      action={decideAction.bind(null, lineId)}
      className={styles["decide"] ?? ""}
      label={`${label} is not ${name}`}
    >
      <input type="hidden" name="entryId" value={proposal.entryId} />
      <input type="hidden" name="seen" value={seen} />
      <input type="hidden" name="tieInId" value={proposal.tieInId} />
      <input type="hidden" name="state" value="refused" />
      <ReasonField presets={REFUSE_REASONS} chosen={fittingRefusal(proposal)} />
      <div>
        <SubmitButton quiet={quiet} pendingWord="Saving …">
          Not a match
          <span className="hidden">
            : {label} and {name}
          </span>
        </SubmitButton>
      </div>
    </ActionForm>
  );
}
