import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { SelectableRow } from "#app/_components/row-select.client.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import type { Pairing, PairingState } from "#lib/domain/facts/pairing.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { tieInName } from "../../names.ts";
import type { LinePart } from "../../part.ts";
import stacked from "../../stacked.module.css";
import { withdrawAction } from "../actions.ts";
import { entryWords } from "../place-words.ts";
import { ReasonField } from "../reason-field.tsx";
import { UNDO_REASONS } from "../reasons.ts";
import styles from "../reconcile.module.css";

const STATE_WORDS: Record<PairingState, string> = { accepted: "accepted", refused: "rejected" };

/** What people decided, accepted and rejected, with who, when and why; each can be undone. */
export function Decided(part: LinePart) {
  const { file } = part;
  if (file.pairings.length === 0) return null;
  const accepted = file.pairings.filter(({ state }) => state === "accepted").length;
  const rejected = file.pairings.length - accepted;
  return (
    <Section
      title="Decisions"
      id="decisions"
      note="Rejected matches are kept so they aren’t proposed again."
      folded={`${accepted} accepted, ${rejected} rejected`}
    >
      <Scroll>
        <table className={`plain ${stacked["stacked"]}`}>
          <thead>
            <tr>
              <th scope="col">On record</th>
              <th scope="col">Seen</th>
              <th scope="col">Difference</th>
              <th scope="col">Decided</th>
              <th scope="col">Reason</th>
              <th scope="col">
                <span className="hidden">Undo</span>
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
  const { label } = entryWords(file, pairing.entryId, null);
  const name = tieInName(file, pairing.tieInId);
  return (
    <>
      <th scope="row">{label}</th>
      <td data-title="Seen as">{name}</td>
      <td className="nowrap" data-title="Difference:">
        {pairing.distance === null ? "not known" : formatFeet(Math.abs(pairing.distance))}
      </td>
      <td>
        {STATE_WORDS[pairing.state]} by {pairing.decidedBy},{" "}
        {formatDay(pairing.decidedOn, report.today)}
      </td>
      <td>{pairing.reason}</td>
      <td>
        {mayFile ? (
          <details className="screen-only">
            <summary>
              Undo
              <span className="hidden">
                {" "}
                the decision on {label} and {name}
              </span>
            </summary>
            <ActionForm
              action={withdrawAction.bind(null, lineId)}
              className={styles["decide"] ?? ""}
              label={`Undo the decision on ${label} and ${name}`}
            >
              <input type="hidden" name="pairingId" value={pairing.id} />
              <ReasonField presets={UNDO_REASONS} />
              <div>
                <SubmitButton quiet pendingWord="Undoing …">
                  Undo
                </SubmitButton>
              </div>
            </ActionForm>
          </details>
        ) : null}
      </td>
    </>
  );
}
