import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Field } from "#app/_components/field.tsx";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { LetterKind } from "#lib/domain/facts/notice.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { type ReplyBy, replyByFor } from "#lib/domain/notices/reply-by.ts";
import type { Recipient } from "#lib/domain/paper/addressed.ts";
import { copiesOf } from "#lib/domain/paper/copy.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { replyDayFor } from "#lib/domain/paper/reply-day.ts";
import { letterLanguagesIn } from "#lib/domain/party/letter-languages.ts";
import { partyName, stakeAt, tieInName } from "../../names.ts";
import { draftLettersAction } from "../actions.ts";
import { languageWords } from "../letter-languages.ts";
import { othersFor } from "./others.ts";

/** Those who are proposed, selected; everyone else, not selected; and the reply-by date. */
export function RecipientForm({
  lineId,
  file,
  report,
  office,
  kind,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly office: Office | null;
  readonly report: Report;
  readonly kind: LetterKind;
}) {
  const proposed = recipientsOf(file, report, kind);
  const copies = copiesOf(file, report, kind);
  const others = othersFor(file, kind, proposed);
  const languages = letterLanguagesIn(file, office);
  const replyBy =
    office === null
      ? replyByFor(file, kind, report.today)
      : replyDayFor({ file, report, office }, kind);
  const boxOf = (selected: boolean) => (recipient: Recipient) => (
    <RecipientBox
      key={boxValue(recipient)}
      file={file}
      kind={kind}
      recipient={recipient}
      language={languageWords(languages(recipient))}
      selected={selected}
    />
  );
  if (proposed.length === 0 && others.length === 0) {
    return (
      <Empty title="No recipients yet.">
        <p>Enter the owners and occupants first, under “Who is on it?”.</p>
      </Empty>
    );
  }
  return (
    <ActionForm
      className="stack screen-only"
      action={draftLettersAction.bind(null, lineId)}
      label="Create drafts"
    >
      <input type="hidden" name="kind" value={kind} />
      {proposed.length === 0 ? (
        <p>No suggested recipients.</p>
      ) : (
        <fieldset className="stack-tight">
          <legend>Suggested</legend>
          {proposed.map(boxOf(true))}
        </fieldset>
      )}
      {copies.length === 0 ? null : (
        <fieldset className="stack-tight">
          <legend>Copies, for their file</legend>
          {copies.map(boxOf(true))}
        </fieldset>
      )}
      {others.length === 0 ? null : (
        <details open={proposed.length === 0}>
          <summary>Others on the line</summary>
          <fieldset className="stack-tight">
            <legend className="hidden">Others on the line</legend>
            {others.map(boxOf(false))}
          </fieldset>
        </details>
      )}
      <Field
        label="Reply by"
        name="replyBy"
        type="date"
        min={report.today}
        {...(replyBy === null ? {} : { defaultValue: replyBy.on })}
        hint={`${ruleWords(replyBy)}Printed in the letter and used for follow-up. Leave blank if no reply is needed.`}
      />
      <div>
        <SubmitButton pendingWord="Creating …">Create drafts</SubmitButton>
      </div>
    </ActionForm>
  );
}

/** From which rule the day was filled in; it can be changed. */
function ruleWords(replyBy: ReplyBy | null): string {
  if (replyBy === null) return "";
  const { title, sentence, citation } = replyBy;
  return `Filled in from “${title}”${citation === "" ? "" : ` (${citation})`}: ${sentence} You can change it. `;
}

function RecipientBox({
  file,
  kind,
  recipient,
  language,
  selected,
}: {
  readonly file: LineFile;
  readonly kind: LetterKind;
  readonly recipient: Recipient;
  readonly language: string;
  readonly selected: boolean;
}) {
  const had = file.notices.filter(
    (notice) =>
      notice.kind === kind &&
      notice.partyId === recipient.partyId &&
      notice.propertyId === recipient.propertyId &&
      notice.tieInId === recipient.tieInId &&
      notice.paperId === (recipient.paperId ?? ""),
  );
  // An amount is told anew with every version of the split; a letter on an older one does not do.
  const written = had.filter((notice) => notice.splitId === recipient.splitId);
  return (
    <label className="check">
      <input
        type="checkbox"
        name="recipient"
        value={boxValue(recipient)}
        defaultChecked={selected && written.length === 0}
      />
      <span>
        {partyName(file, recipient.partyId)}
        <span className="muted">
          {placeWords(file, recipient)}
          {language === "" ? "" : `, ${language}`}
          {hadWords({ had: had.length, written: written.length })}
        </span>
      </span>
    </label>
  );
}

function hadWords({ had, written }: { readonly had: number; readonly written: number }): string {
  if (had === 0) return "";
  const letter = "already has this letter";
  return written === 0 ? `; ${letter} (older version)` : `; ${letter}`;
}

function placeWords(file: LineFile, { partyId, propertyId, tieInId, paperId }: Recipient): string {
  const paper = file.authority?.statutoryPapers.find(({ id }) => id === paperId);
  if (paper !== undefined && propertyId !== null)
    return `, ${stakeAt(file, partyId, propertyId)}: ${paper.title}`;
  const stake = propertyId === null ? "" : `, ${stakeAt(file, partyId, propertyId)}`;
  return tieInId === null ? stake : `${stake}, about tie-in ${tieInName(file, tieInId)}`;
}

/** What the check box sends; the languages follow from who they are to. */
function boxValue({ partyId, propertyId, tieInId, splitId, paperId }: Recipient): string {
  return JSON.stringify({ partyId, propertyId, tieInId, splitId, paperId });
}
