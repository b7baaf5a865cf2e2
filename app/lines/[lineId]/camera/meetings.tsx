import { NoticeBox } from "#app/_components/notice-box.tsx";
import { meetingsOf } from "#lib/domain/run/meeting.ts";
import type { LinePart } from "../part.ts";

/** Where runs from both ends meet: whether they saw the same, and how far their lengths disagree. */
export function Meetings({ file, report }: LinePart) {
  return meetingsOf(file, report.stations).map(({ runIds, sentences, agrees }) =>
    agrees ? (
      <p key={runIds.join()} className="muted">
        {sentences.join(" ")}
      </p>
    ) : (
      <NoticeBox
        key={runIds.join()}
        kind="caution"
        title="Two runs from opposite ends do not agree"
      >
        {sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </NoticeBox>
    ),
  );
}
