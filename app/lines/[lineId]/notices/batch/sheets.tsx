import { Section } from "#app/_components/section.tsx";
import type { LetterKind } from "#lib/domain/facts/notice.ts";
import { LABEL_SHEETS } from "#lib/domain/mailing/label-sheets.ts";
import { printHangersAction, printLabelsAction } from "./actions.ts";
import { HangerButton, LabelButton } from "./sheets.client.tsx";

/** What else goes with a mailing: the list, labels, door hangers. */
export function Sheets({
  lineId,
  kind,
  noticeIds,
  hangers,
}: {
  readonly lineId: string;
  readonly kind: LetterKind;
  readonly noticeIds: readonly string[];
  /** Whether this kind may hang on a door. */
  readonly hangers: boolean;
}) {
  const list = `/lines/${lineId}/notices/batch/list?kind=${kind}`;
  const paper = `/lines/${lineId}/notices/paper`;
  return (
    <Section
      title="Lists and sheets"
      id="sheets"
      note="In the same order as the letters. Print labels at 100%, on plain paper first."
    >
      <div className="stack screen-only">
        <p className="cluster">
          <a href={list} download>
            Mailing list, CSV
          </a>
          <a href={`${list}&as=xlsx`} download>
            Mailing list, XLSX
          </a>
        </p>
        <LabelButton
          sheets={LABEL_SHEETS.map(({ id, name }) => ({ value: id, label: name }))}
          print={printLabelsAction.bind(null, lineId)}
          noticeIds={noticeIds}
          paper={paper}
        />
        {hangers ? (
          <HangerButton
            print={printHangersAction.bind(null, lineId)}
            noticeIds={noticeIds}
            paper={paper}
          />
        ) : null}
      </div>
    </Section>
  );
}
