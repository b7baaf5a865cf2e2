import { Fragment } from "react";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { onPage, Pages, pageFrom } from "#app/_components/pages.tsx";
import { SelectableRow, SelectOnStrip } from "#app/_components/row-select.client.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import type { ProposedPairing } from "#lib/domain/findings/report.ts";
import type { CompassPoint } from "#lib/domain/plan/compass.ts";
import { sureProposals } from "#lib/domain/report/pairs-now.ts";
import { BAND_WORDS } from "../../field-terms.ts";
import { counted, tieInName } from "../../names.ts";
import type { LinePart } from "../../part.ts";
import stacked from "../../stacked.module.css";
import { acceptSureAction } from "../actions.ts";
import { entryWords, placeWords } from "../place-words.ts";
import { ReasonField } from "../reason-field.tsx";
import { ACCEPT_REASONS, fittingReason } from "../reasons.ts";
import styles from "../reconcile.module.css";
import { DecideForms } from "./decide-forms.tsx";

/** So many matches, each with its forms, stand on a page. */
const AT_ONCE = 15;

/** Which page of each list the address asks for. */
export interface MatchQuery {
  readonly same?: string | string[];
  readonly review?: string | string[];
  readonly left?: string | string[];
}

/** Matches that the program proposes and nobody has decided: those in the same place in one go. */
export function Proposals({ asked, ...part }: LinePart & { readonly asked: MatchQuery }) {
  const { report, mayFile } = part;
  if (report.alignment === null || report.proposals.length === 0) return null;
  const sure = sureProposals(report);
  const together = sure.length > 1 ? sure : [];
  const singly = report.proposals.filter((each) => !together.includes(each));
  const at = { same: pageFrom(asked.same, AT_ONCE), review: pageFrom(asked.review, AT_ONCE) };
  const path = `/lines/${part.lineId}/reconcile/match`;
  return (
    <>
      {together.length === 0 ? null : (
        <Section title="Same place" id="same-place">
          {mayFile ? <AcceptSure sure={together} {...part} /> : null}
          <SureTable sure={onPage(together, at.same, AT_ONCE)} {...part} />
          <Pages
            from={at.same}
            most={AT_ONCE}
            of={together.length}
            what="matches"
            href={(page) => `${path}?same=${page}#same-place`}
          />
        </Section>
      )}
      {singly.length === 0 ? null : (
        <Section title="Matches to review" id="review">
          <ol className={styles["proposals"]}>
            {onPage(singly, at.review, AT_ONCE).map((proposal) => (
              <li key={`${proposal.entryId} ${proposal.tieInId}`} className={styles["proposal"]}>
                <Proposal proposal={proposal} {...part} />
              </li>
            ))}
          </ol>
          <Pages
            from={at.review}
            most={AT_ONCE}
            of={singly.length}
            what="matches to review"
            href={(page) => `${path}?review=${page}#review`}
          />
        </Section>
      )}
    </>
  );
}

function AcceptSure({ sure, lineId }: LinePart & { readonly sure: readonly ProposedPairing[] }) {
  return (
    <ActionForm
      action={acceptSureAction.bind(null, lineId)}
      className={`screen-only ${styles["all"]}`}
      label="Accept all same-place matches"
    >
      {sure.map(({ entryId, tieInId }) => (
        <Fragment key={`${entryId} ${tieInId}`}>
          <input type="hidden" name="entryId" value={entryId} />
          <input type="hidden" name="tieInId" value={tieInId} />
        </Fragment>
      ))}
      <p className={styles["wide"]}>
        <span className="strong">{counted(sure.length, "match", "matches")}</span> are within
        tolerance with no competing match. Review them, then accept them all in your name.
      </p>
      <ReasonField presets={ACCEPT_REASONS} chosen={reasonForAll(sure)} label="Reason (for all)" />
      <div>
        <SubmitButton pendingWord="Accepting …">Accept all {sure.length}</SubmitButton>
      </div>
    </ActionForm>
  );
}

/** What fits all of them: that the record was corrected is said only where one needed it. */
function reasonForAll(sure: readonly ProposedPairing[]): string {
  const [first = ACCEPT_REASONS[1], ...others] = new Set(sure.map(fittingReason));
  return others.length === 0 ? first : ACCEPT_REASONS[1];
}

/** The same-place matches, a row each; one that should be decided by itself opens its forms. */
function SureTable({ sure, ...part }: LinePart & { readonly sure: readonly ProposedPairing[] }) {
  const { file, report, mayFile } = part;
  return (
    <Scroll>
      <table className={`plain ${stacked["stacked"]}`}>
        <thead>
          <tr>
            <th scope="col">On record</th>
            <th scope="col">Seen</th>
            <th scope="col">Why</th>
            {mayFile ? (
              <th scope="col" className="screen-only">
                <span className="hidden">Decide</span>
              </th>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {sure.map((proposal) => {
            const entry = entryWords(file, proposal.entryId, compassOf(report, proposal));
            const finding = report.tieIns.find((each) => each.tieIn.id === proposal.tieInId);
            return (
              <SelectableRow key={proposal.entryId} id={proposal.tieInId}>
                <th scope="row">
                  {entry.label} <span className="muted small nowrap">{entry.place}</span>
                </th>
                <td data-title="Seen as">
                  {tieInName(file, proposal.tieInId)}{" "}
                  <span className="muted small nowrap">
                    {finding === undefined ? "" : placeWords(finding)}
                  </span>
                </td>
                <td className="small">{proposal.reasons.join(" ")}</td>
                {mayFile ? (
                  <td className="screen-only">
                    <details>
                      <summary>
                        Decide separately
                        <span className="hidden">: {entry.label}</span>
                      </summary>
                      <DecideForms quiet proposal={proposal} {...part} />
                    </details>
                  </td>
                ) : null}
              </SelectableRow>
            );
          })}
        </tbody>
      </table>
    </Scroll>
  );
}

/** The wind that the entry's side faces; null where no bearing tells. */
function compassOf(
  { entries }: LinePart["report"],
  { entryId }: ProposedPairing,
): CompassPoint | null {
  return entries.find((each) => each.entryId === entryId)?.compass ?? null;
}

function Proposal({ proposal, ...part }: LinePart & { readonly proposal: ProposedPairing }) {
  const { file, report, mayFile } = part;
  const entry = entryWords(file, proposal.entryId, compassOf(report, proposal));
  const finding = report.tieIns.find((each) => each.tieIn.id === proposal.tieInId);
  const [distance, ...alike] = proposal.reasons;
  return (
    <>
      <div>
        <p>
          <SelectOnStrip id={proposal.entryId}>{entry.label}</SelectOnStrip>{" "}
          <span>{entry.place}</span>
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
          <NoticeBox kind="caution" title="Another match is equally or nearly as good.">
            <p>Check the nearby tie-ins on the strip before accepting.</p>
          </NoticeBox>
        ) : null}
      </div>
      {mayFile ? <DecideForms proposal={proposal} {...part} /> : null}
    </>
  );
}
