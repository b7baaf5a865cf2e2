import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { overshoots } from "#lib/domain/split/overshoot.ts";
import { cutToTieInAction } from "./actions.ts";

/** Work that reaches a little past the last tie-in, where no rule by place can share it out. */
export function OvershootBoxes({
  lineId,
  file,
  report,
  work,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly work: boolean;
}) {
  return overshoots(file, report.tieIns).map(({ itemId, tieIn, sentence }) => (
    <NoticeBox key={itemId} kind="caution" title="An item ends past the last tie-in">
      <p>{sentence}</p>
      {work ? (
        <ActionForm
          action={cutToTieInAction.bind(null, lineId)}
          className="cluster screen-only"
          label={`Shorten it to ${tieIn}`}
        >
          <input type="hidden" name="itemId" value={itemId} />
          <SubmitButton quiet pendingWord="Shortening…">
            Shorten it to {tieIn}
          </SubmitButton>
          <span className="muted">Its price stays the same.</span>
        </ActionForm>
      ) : null}
    </NoticeBox>
  ));
}
