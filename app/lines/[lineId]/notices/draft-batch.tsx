import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice, Tick } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import stacks from "#app/_components/stacks.module.css";
import { addressStop, LINK_DAYS } from "#lib/domain/consent/private-link.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { METHOD_WORDS } from "#lib/domain/facts/notice-words.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { letterGaps } from "#lib/domain/paper/gaps.ts";
import { ADDRESS_WORDS } from "#lib/operations/send-notices.ts";
import { counted, partyName } from "../names.ts";
import { LETTER_WORDS, optionsOf } from "../terms.ts";
import { aboutWords } from "./about-words.ts";
import { printLettersAction, sendLettersAction } from "./actions.ts";
import { PrintChosen, TickAll } from "./draft-tools.client.tsx";
import { GapList } from "./gap-list.tsx";
import { languageWords } from "./letter-languages.ts";
import { officeAddress } from "./link-address.ts";

/** All drafts with a check box each: print the selected ones as one PDF, or record how they were sent. */
export function DraftBatch({
  lineId,
  file,
  drafts,
  report,
  office,
  mayOverride,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  /** An admin may send what is incomplete, with a reason. */
  readonly mayOverride: boolean;
  readonly drafts: readonly Notice[];
  readonly report: Report;
  readonly office: Office;
}) {
  const gapsOf = (notice: Notice) => letterGaps({ file, report, office, notice });
  const listed = drafts.map((draft) => ({ draft, gaps: gapsOf(draft) }));
  const lacking = listed.filter(({ gaps }) => gaps.length > 0).length;
  return (
    <ActionForm
      className="stack screen-only"
      action={sendLettersAction.bind(null, lineId)}
      label="Send selected letters"
    >
      {office.address.street === "" ? (
        <p>
          These letters show no return address yet.{" "}
          <Link href="/office">Enter it under Office</Link>.
        </p>
      ) : null}
      <div className="scroll">
        <table className={`plain ${stacks["stacks"]}`}>
          <thead>
            <tr>
              <th scope="col">
                <TickAll name="notice" />
              </th>
              <th scope="col">To</th>
              <th scope="col">Letter</th>
              <th scope="col">About</th>
              <th scope="col">Tracking number</th>
            </tr>
          </thead>
          <tbody>
            {listed.map(({ draft, gaps }) => (
              <DraftRow key={draft.id} lineId={lineId} file={file} draft={draft} gaps={gaps} />
            ))}
          </tbody>
        </table>
      </div>
      <PrintChosen name="notice" print={printLettersAction.bind(null, lineId)} lineId={lineId} />
      <div className="form-grid">
        <Choice
          label="Delivery method"
          name="method"
          required
          options={[{ value: "", label: "choose" }, ...optionsOf(METHOD_WORDS)]}
          hint="Email goes out from the outbox. For anything else, mail it first, then record it here."
        />
        <Field label="Date sent" name="sentOn" type="date" required defaultValue={report.today} />
      </div>
      <LinksTick />
      {lacking === 0 || mayOverride ? null : (
        <p className="muted">
          {counted(lacking, "draft")} {lacking === 1 ? "is" : "are"} incomplete: enter what is
          missing, or ask an admin to send {lacking === 1 ? "it" : "them"} anyway.
        </p>
      )}
      {lacking === 0 || !mayOverride ? null : (
        <Field
          label="Send incomplete letters anyway, because"
          name="despite"
          rows={2}
          hint={`${counted(lacking, "draft")} ${lacking === 1 ? "is" : "are"} incomplete. Your name and this reason are recorded in the history.`}
        />
      )}
      <div>
        <SubmitButton pendingWord="Recording …">Record selected as sent</SubmitButton>
      </div>
    </ActionForm>
  );
}

/** Private links in the messages; said here already where they would be dead. */
function LinksTick() {
  const address = officeAddress();
  const stop = addressStop(address);
  if (stop !== null) return <p className="muted">By email: {ADDRESS_WORDS[stop](address)}.</p>;
  return (
    <Tick
      name="links"
      label={`By email: include a private link in each message, valid for ${LINK_DAYS} days, so the reader can reply and sign on a phone`}
    />
  );
}

function LanguageNote({ draft }: { readonly draft: Notice }) {
  const words = languageWords(draft);
  return words === "" ? null : <span className="muted"> ({words})</span>;
}

function DraftRow({
  lineId,
  file,
  draft,
  gaps,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly draft: Notice;
  readonly gaps: readonly string[];
}) {
  const name = partyName(file, draft.partyId);
  const email = file.parties.find((party) => party.id === draft.partyId)?.email ?? "";
  return (
    <tr>
      <td>
        <input
          type="checkbox"
          name="notice"
          value={draft.id}
          defaultChecked={gaps.length === 0}
          aria-label={`${LETTER_WORDS[draft.kind]} to ${name}`}
        />
      </td>
      <th scope="row">
        {name}
        <LanguageNote draft={draft} />
        {email === "" ? <span className="muted small"> no email on file</span> : null}
      </th>
      <td data-label="Letter">
        <Link href={`/lines/${lineId}/notices/letter/${draft.id}`}>{LETTER_WORDS[draft.kind]}</Link>
        <GapList gaps={gaps} />
      </td>
      <td data-label="About">{aboutWords(file, draft)}</td>
      <td data-label="Tracking number">
        <input
          className="input"
          name={`tracking:${draft.id}`}
          aria-label={`Tracking number of the letter to ${name}`}
          autoComplete="off"
          style={{ maxWidth: "24ch" }}
        />
      </td>
    </tr>
  );
}
