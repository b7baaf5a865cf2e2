import Link from "next/link";
import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { LetterKind } from "#lib/domain/facts/notice.ts";
import { METHOD_WORDS, REPLY_VERBS } from "#lib/domain/facts/notice-words.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { type ToldCell, toldOn } from "#lib/domain/notices/told.ts";
import { toldCount } from "#lib/domain/paper/told-count.ts";
import { sayList } from "#lib/domain/say/say-list.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { Beneath } from "../beneath.tsx";
import { partyName, stakeOf } from "../names.ts";
import { LETTER_WORDS, PROOF_WORDS, toldParts } from "../terms.ts";
import { aboutWords } from "./about-words.ts";

/** Every party against every letter that was written, with how it went and what came back. */
export function ToldTable({
  lineId,
  file,
  report,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
}) {
  const told = toldOn(file);
  const { today } = report;
  return (
    <Scroll>
      <table className={`plain ${stacks["stacks"]}`}>
        <Heads of={["Party", ...told.kinds.map((kind) => LETTER_WORDS[kind])]} />
        <tbody>
          {told.rows.map((row) => (
            <tr key={row.partyId}>
              <th scope="row">
                {partyName(file, row.partyId)}
                <Beneath>{stakeOf(file, row.partyId) || "no role yet"}</Beneath>
              </th>
              {told.kinds.map((kind) => (
                <td key={kind} data-label={LETTER_WORDS[kind]}>
                  <Cells lineId={lineId} file={file} cells={row.cells[kind] ?? []} today={today} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Of those due one</th>
            {told.kinds.map((kind) => (
              <td key={kind} data-label={LETTER_WORDS[kind]}>
                <Count file={file} report={report} kind={kind} />
              </td>
            ))}
          </tr>
        </tfoot>
      </table>
    </Scroll>
  );
}

/** How many of a letter's recipients were written to, reached and answered, and who was not. */
function Count({
  file,
  report,
  kind,
}: {
  readonly file: LineFile;
  readonly report: Report;
  readonly kind: LetterKind;
}) {
  const { of, written, reached, answered, missing } = toldCount(file, report, kind);
  if (of === 0) return <span className="muted">not due to anyone now</span>;
  const names = [...new Set(missing.map(({ partyId }) => partyName(file, partyId)))];
  return (
    <>
      {written} of {of} sent, {reached} reached, {answered} answered
      {names.length === 0 ? null : <Beneath>not yet: {sayList(names, 4)}</Beneath>}
    </>
  );
}

interface CellsProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly cells: readonly ToldCell[];
  readonly today: string;
}

/** One line for each letter of a kind; where there are several, each says what it is about. */
function Cells({ lineId, file, cells, today }: CellsProps) {
  if (cells.length === 0) return <span className="muted">not sent</span>;
  return (
    <div className="stack-tight">
      {cells.map((cell) => (
        <div key={cell.noticeId}>
          {cells.length > 1 ? <span className="muted">{aboutWords(file, cell)}: </span> : null}
          <Cell lineId={lineId} cell={cell} today={today} />
        </div>
      ))}
    </div>
  );
}

function Cell({
  lineId,
  cell,
  today,
}: {
  readonly lineId: string;
  readonly cell: ToldCell;
  readonly today: string;
}) {
  const { done, butNot } = toldParts(cell.state);
  return (
    <>
      <Link href={`/lines/${lineId}/notices/letter/${cell.noticeId}`}>{done}</Link>
      {cell.on === null ? null : ` ${formatDay(cell.on, today)}`}
      {cell.method === null ? null : `, ${METHOD_WORDS[cell.method]}`}
      {butNot}
      {cell.provenBy === null ? null : `, ${PROOF_WORDS[cell.provenBy]}`}
      {cell.attempts > 1 ? `, ${cell.attempts} attempts` : ""}
      {cell.reply === null ? null : (
        <>
          <br />
          <span className="strong">{REPLY_VERBS[cell.reply.kind]}</span>{" "}
          {formatDay(cell.reply.receivedOn, today)}
          {cell.answer === "waits" ? ", needs an answer" : null}
        </>
      )}
    </>
  );
}
