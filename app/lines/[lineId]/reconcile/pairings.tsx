import { Fragment } from "react";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { SelectableRow, SelectOnStrip } from "#app/_components/row-select.client.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import type { Pairing } from "#lib/domain/facts/pairing.ts";
import type { ProposedPairing, TieInFinding } from "#lib/domain/findings/report.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { sureProposals } from "#lib/domain/report/pairs-now.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { BAND_WORDS } from "../field-terms.ts";
import { counted, tieInName } from "../names.ts";
import type { LinePart } from "../part.ts";
import stacked from "../stacked.module.css";
import { acceptSureAction, decideAction, withdrawAction } from "./actions.ts";
import { entryWords, placeWords, tieInWords } from "./pairings-view.ts";
import { ReasonField } from "./reason-field.tsx";
import {
  ACCEPT_REASONS,
  fittingReason,
  fittingRefusal,
  REFUSE_REASONS,
  UNDO_REASONS,
} from "./reasons.ts";
import styles from "./reconcile.module.css";

/** Pairings that the program proposes and nobody has decided, the ones to look at first. */
export function Proposals(part: LinePart) {
  const { report, mayFile } = part;
  if (report.alignment === null) return null;
  const sure = sureProposals(report);
  const ordered = [...report.proposals.filter((each) => !sure.includes(each)), ...sure];
  return (
    <Section title="Pairings to decide">
      {ordered.length === 0 ? (
        <p className="muted">Nothing is waiting for a decision.</p>
      ) : (
        <>
          {mayFile && sure.length > 1 ? <AcceptSure sure={sure} {...part} /> : null}
          <ol className={styles["proposals"]}>
            {ordered.map((proposal) => (
              <li key={`${proposal.entryId} ${proposal.tieInId}`} className={styles["proposal"]}>
                <Proposal proposal={proposal} {...part} />
              </li>
            ))}
          </ol>
        </>
      )}
    </Section>
  );
}

function AcceptSure({ sure, lineId }: LinePart & { readonly sure: readonly ProposedPairing[] }) {
  return (
    <ActionForm
      action={acceptSureAction.bind(null, lineId)}
      className={styles["all"] ?? ""}
      label="Accept all that are in the same place"
    >
      {sure.map(({ entryId, tieInId }) => (
        <Fragment key={`${entryId} ${tieInId}`}>
          <input type="hidden" name="entryId" value={entryId} />
          <input type="hidden" name="tieInId" value={tieInId} />
        </Fragment>
      ))}
      <p className={styles["wide"]}>
        <span className="strong">{counted(sure.length, "pairing")}</span> lie within the tolerance
        and have no rival. Look over them below; then they can be accepted in one go, in your name.
      </p>
      <ReasonField presets={ACCEPT_REASONS} chosen={ACCEPT_REASONS[1]} label="Reason for all" />
      <div>
        <SubmitButton pendingWord="Accepting …">Accept all {sure.length}</SubmitButton>
      </div>
    </ActionForm>
  );
}

function Proposal({ proposal, ...part }: LinePart & { readonly proposal: ProposedPairing }) {
  const { file, report, mayFile } = part;
  const entry = entryWords(file, proposal.entryId);
  const finding = report.tieIns.find((each) => each.tieIn.id === proposal.tieInId);
  const [distance, ...alike] = proposal.reasons;
  return (
    <>
      <div>
        <p>
          <SelectOnStrip id={proposal.entryId}>{entry.label}</SelectOnStrip>{" "}
          <span className="nowrap">{entry.place}</span>
        </p>
        <p className="muted small">{entry.record}</p>
        <p>
          <span className="muted">is </span>
          <SelectOnStrip id={proposal.tieInId}>{tieInName(file, proposal.tieInId)}</SelectOnStrip>{" "}
          <span className="nowrap">{finding === undefined ? "" : placeWords(finding)}</span>
        </p>
      </div>
      <div>
        <p>
          <span className="tag">{BAND_WORDS[proposal.band]}</span> {distance}
        </p>
        <ul className={styles["why"]}>
          {alike.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
        {proposal.nearTie ? (
          <NoticeBox kind="caution" title="Another pairing is as good, or nearly.">
            <p>Look at the neighbours on the strip before you accept this one.</p>
          </NoticeBox>
        ) : null}
      </div>
      {mayFile ? <DecideForms proposal={proposal} {...part} /> : null}
    </>
  );
}

/** Both answers stand open where the two contradict each other; else the likelier one does. */
function DecideForms({
  proposal,
  lineId,
  file,
  report,
}: LinePart & { readonly proposal: ProposedPairing }) {
  const { entryId, tieInId, band } = proposal;
  const { label } = entryWords(file, entryId);
  const pair = { proposal, lineId, label, name: tieInName(file, tieInId) };
  const others = report.tieIns.filter((each) => each.tieIn.id !== tieInId);
  const isConflict = band === "conflict";
  return (
    <div className="stack-tight screen-only">
      {isConflict ? <RefuseForm {...pair} /> : null}
      <AcceptForm {...pair} />
      {isConflict ? null : (
        <details>
          <summary>
            Not a match
            <span className="hidden">
              : {label} and {pair.name}
            </span>
          </summary>
          <RefuseForm quiet {...pair} />
        </details>
      )}
      {others.length === 0 ? null : (
        <PairWithOther entryId={entryId} others={others} lineId={lineId} label={label} />
      )}
    </div>
  );
}

interface Pair {
  readonly proposal: ProposedPairing;
  readonly lineId: string;
  readonly label: string;
  readonly name: string;
}

function AcceptForm({ proposal, lineId, label, name }: Pair) {
  return (
    <ActionForm
      action={decideAction.bind(null, lineId)}
      className={styles["decide"] ?? ""}
      label={`${label} is ${name}`}
    >
      <input type="hidden" name="entryId" value={proposal.entryId} />
      <input type="hidden" name="tieInId" value={proposal.tieInId} />
      <input type="hidden" name="state" value="accepted" />
      <ReasonField presets={ACCEPT_REASONS} chosen={fittingReason(proposal)} />
      <div>
        <SubmitButton pendingWord="Accepting …">
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

/** Folded away where a pair is likely; beside the acceptance where the two contradict each other. */
function RefuseForm({
  proposal,
  lineId,
  label,
  name,
  quiet = false,
}: Pair & { readonly quiet?: boolean }) {
  return (
    <ActionForm
      action={decideAction.bind(null, lineId)}
      className={styles["decide"] ?? ""}
      label={`${label} is not ${name}`}
    >
      <input type="hidden" name="entryId" value={proposal.entryId} />
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

/** An entry paired with a tie-in that the person names. */
export function PairWithOther({
  entryId,
  label,
  others,
  lineId,
}: {
  readonly entryId: string;
  readonly label: string;
  readonly others: readonly TieInFinding[];
  readonly lineId: string;
}) {
  return (
    <details>
      <summary>
        Pair with another<span className="hidden">: {label}</span>
      </summary>
      <ActionForm
        action={decideAction.bind(null, lineId)}
        className={styles["decide"] ?? ""}
        label={`Pair ${label} with another tie-in`}
      >
        <input type="hidden" name="entryId" value={entryId} />
        <input type="hidden" name="state" value="accepted" />
        <Choice
          label="It is"
          name="tieInId"
          options={[
            { value: "", label: "choose a tie-in" },
            ...others.map((each) => ({ value: each.tieIn.id, label: tieInWords(each) })),
          ]}
        />
        <ReasonField presets={ACCEPT_REASONS} />
        <div>
          <SubmitButton quiet pendingWord="Pairing …">
            Pair
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

/** What people decided, accepted and refused, with who, when and why; each can be taken back. */
export function Decided(part: LinePart) {
  const { file } = part;
  if (file.pairings.length === 0) return null;
  return (
    <Section
      title="What was decided"
      note="Refusals are kept too, so that nobody proposes the same again without knowing."
    >
      <Scroll>
        <table className={`plain ${stacked["stacked"]}`}>
          <thead>
            <tr>
              <th scope="col">On record</th>
              <th scope="col">Seen</th>
              <th scope="col">Apart</th>
              <th scope="col">Decided</th>
              <th scope="col">Why</th>
              <th scope="col">
                <span className="hidden">Take back</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {file.pairings.map((pairing) => (
              <SelectableRow key={pairing.id} id={pairing.tieInId}>
                <DecidedCells pairing={pairing} {...part} />
              </SelectableRow>
            ))}
          </tbody>
        </table>
      </Scroll>
    </Section>
  );
}

function DecidedCells({
  pairing,
  lineId,
  file,
  report,
  mayFile,
}: LinePart & { readonly pairing: Pairing }) {
  const { label } = entryWords(file, pairing.entryId);
  const name = tieInName(file, pairing.tieInId);
  return (
    <>
      <th scope="row">{label}</th>
      <td data-title="Seen as">{name}</td>
      <td className="nowrap" data-title="Apart:">
        {pairing.distance === null ? "not known" : formatFeet(Math.abs(pairing.distance))}
      </td>
      <td>
        {pairing.state} by {pairing.decidedBy}, {formatDay(pairing.decidedOn, report.today)}
      </td>
      <td>{pairing.reason}</td>
      <td>
        {mayFile ? (
          <details className="screen-only">
            <summary>
              Take back
              <span className="hidden">
                {" "}
                the decision on {label} and {name}
              </span>
            </summary>
            <ActionForm
              action={withdrawAction.bind(null, lineId)}
              className={styles["decide"] ?? ""}
              label={`Take back the decision on ${label} and ${name}`}
            >
              <input type="hidden" name="pairingId" value={pairing.id} />
              <ReasonField presets={UNDO_REASONS} />
              <div>
                <SubmitButton quiet pendingWord="Taking back …">
                  Take back
                </SubmitButton>
              </div>
            </ActionForm>
          </details>
        ) : null}
      </td>
    </>
  );
}
