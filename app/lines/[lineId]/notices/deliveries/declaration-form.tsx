import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import stacks from "#app/_components/stacks.module.css";
import { Upload } from "#app/_components/upload.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Delivery } from "#lib/domain/facts/notice.ts";
import { METHOD_WORDS } from "#lib/domain/facts/notice-words.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { formatTime } from "#lib/domain/time/time-of-day.ts";
import { partyName } from "../../names.ts";
import { LETTER_WORDS } from "../../terms.ts";
import { declareDeliveriesAction, fileDeclarationAction } from "../actions.ts";
import { PrintChosen, TickAll } from "../draft-tools.client.tsx";
import { PaperLink } from "../paper-link.tsx";

/** Every delivery with its declaration: select, print, sign on paper, file the signed one. */
export function DeclarationForm({
  lineId,
  file,
  attempts,
  today,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly attempts: readonly Delivery[];
  readonly today: string;
}) {
  return (
    <ActionForm
      key={attempts.map(({ id, declaredUploadId }) => `${id}${declaredUploadId}`).join(" ")}
      className="stack screen-only"
      action={fileDeclarationAction.bind(null, lineId)}
      label="Declaration of delivery"
    >
      <div className="scroll">
        <table className={`plain ${stacks["stacks"]}`}>
          <thead>
            <tr>
              <th scope="col">
                <TickAll name="declared" />
              </th>
              <th scope="col">To</th>
              <th scope="col">Letter</th>
              <th scope="col">Delivery</th>
              <th scope="col">Done by</th>
              <th scope="col">Declaration</th>
            </tr>
          </thead>
          <tbody>
            {attempts.map((attempt) => (
              <DeclaredRow
                key={attempt.id}
                lineId={lineId}
                file={file}
                attempt={attempt}
                today={today}
              />
            ))}
          </tbody>
        </table>
      </div>
      <PrintChosen
        name="declared"
        print={declareDeliveriesAction.bind(null, lineId)}
        lineId={lineId}
        words="Print the declaration"
        none="Select the deliveries to declare."
      />
      <Upload
        lineId={lineId}
        name="uploadId"
        label="Signed declaration"
        hint="Scan or photo, once the person who delivered them has signed. It is kept with each selected delivery."
      />
      <div>
        <SubmitButton pendingWord="Filing …" quiet>
          File with the selected deliveries
        </SubmitButton>
      </div>
    </ActionForm>
  );
}

function DeclaredRow({
  lineId,
  file,
  attempt,
  today,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly attempt: Delivery;
  readonly today: string;
}) {
  const notice = file.notices.find(({ id }) => id === attempt.noticeId);
  if (notice === undefined) return null;
  const name = partyName(file, notice.partyId);
  const time = attempt.at === "" ? "" : `, ${formatTime(attempt.at)}`;
  return (
    <tr>
      <td>
        <input
          type="checkbox"
          name="declared"
          value={attempt.id}
          defaultChecked={attempt.declaredUploadId === null}
          aria-label={`${LETTER_WORDS[notice.kind]} to ${name}, ${METHOD_WORDS[attempt.method]}`}
        />
      </td>
      <th scope="row">{name}</th>
      <td data-label="Letter">{LETTER_WORDS[notice.kind]}</td>
      <td data-label="Delivery">
        {METHOD_WORDS[attempt.method]}, {formatDay(attempt.sentOn, today)}
        {time}
      </td>
      <td data-label="Done by">{attempt.by}</td>
      <td data-label="Declaration">
        {attempt.declaredUploadId === null ? (
          <span className="muted">not signed</span>
        ) : (
          <PaperLink
            lineId={lineId}
            file={file}
            uploadId={attempt.declaredUploadId}
            words="Signed"
          />
        )}
      </td>
    </tr>
  );
}
