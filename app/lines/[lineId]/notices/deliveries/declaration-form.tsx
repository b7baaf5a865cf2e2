import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Upload } from "#app/_components/upload.client.tsx";
import { METHOD_WORDS } from "#lib/domain/facts/notice-words.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { formatTime } from "#lib/domain/time/time-of-day.ts";
import { LETTER_WORDS } from "../../terms.ts";
import { declareDeliveriesAction, fileDeclarationAction } from "../actions.ts";
import { PrintChosen } from "../draft-tools.client.tsx";
import { PaperLink } from "../paper-link.tsx";
import { type DeliveriesProps, DeliveryTable } from "./delivery-table.tsx";

/** Every delivery with its declaration: select, print, sign on paper, file the signed one. */
export function DeclarationForm({ lineId, file, attempts, today }: DeliveriesProps) {
  return (
    <ActionForm
      key={attempts.map(({ id, declaredUploadId }) => `${id}${declaredUploadId}`).join(" ")}
      className="stack screen-only"
      action={fileDeclarationAction.bind(null, lineId)}
      label="Declaration of delivery"
    >
      <DeliveryTable
        file={file}
        attempts={attempts}
        name="declared"
        selects={({ declaredUploadId }) => declaredUploadId === null}
        says={({ method }) => `, ${METHOD_WORDS[method]}`}
        columns={[
          { title: "Letter", cell: ({ notice }) => LETTER_WORDS[notice.kind] },
          {
            title: "Delivery",
            cell: ({ attempt: { method, sentOn, at } }) =>
              `${METHOD_WORDS[method]}, ${formatDay(sentOn, today)}${at === "" ? "" : `, ${formatTime(at)}`}`,
          },
          { title: "Done by", cell: ({ attempt }) => attempt.by },
          {
            title: "Declaration",
            cell: ({ attempt: { declaredUploadId } }) =>
              declaredUploadId === null ? (
                <span className="muted">not signed</span>
              ) : (
                <PaperLink lineId={lineId} file={file} uploadId={declaredUploadId} words="Signed" />
              ),
          },
        ]}
      />
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
