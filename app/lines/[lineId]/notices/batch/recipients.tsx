import Link from "next/link";
import type { ReactNode } from "react";
import stacks from "#app/_components/stacks.module.css";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { METHOD_WORDS } from "#lib/domain/facts/notice-words.ts";
import type { BatchRow } from "#lib/domain/mailing/batch.ts";
import { formatAddress } from "#lib/domain/party/address.ts";
import { mailTo } from "#lib/domain/party/mail-to.ts";
import { Beneath } from "../../beneath.tsx";
import { partyName, stakeAt, tieInName } from "../../names.ts";
import { LETTER_WORDS, TOLD_WORDS } from "../../terms.ts";
import { GapList } from "../gap-list.tsx";
import { languageWords } from "../letter-languages.ts";

/** Who gets the letter, why, where it goes, how far it is; a box before those that `chosen` names. */
export function Recipients({
  lineId,
  file,
  rows,
  head,
  boxed,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly rows: readonly BatchRow[];
  /** The head's own box; null: no row can be selected. */
  readonly head: ReactNode;
  /** Whether a row can be selected, and is at first; null: it can't. */
  readonly boxed: (row: BatchRow) => boolean | null;
}) {
  return (
    <div className="scroll">
      <table className={`plain ${stacks["stacks"]}`}>
        <thead>
          <tr>
            {head === null ? null : <th scope="col">{head}</th>}
            <th scope="col">To</th>
            <th scope="col">Because</th>
            <th scope="col">Address</th>
            <th scope="col">Status</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row
              key={keyOf(row)}
              lineId={lineId}
              file={file}
              row={row}
              box={head === null ? undefined : boxed(row)}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function keyOf({ recipient, notice }: BatchRow): string {
  return JSON.stringify([recipient, notice?.id]);
}

function Row({
  lineId,
  file,
  row,
  box,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly row: BatchRow;
  /** Whether it is selected at first; null: it can't be; absent: no row can. */
  readonly box: boolean | null | undefined;
}) {
  const { recipient, notice, noMail, noEmail } = row;
  const name = partyName(file, recipient.partyId);
  const words = notice === null ? "" : languageWords(notice);
  const address = formatAddress(mailTo(file, recipient));
  return (
    <tr>
      {box === undefined ? null : (
        <td>
          {box === null || notice === null ? null : (
            <input
              type="checkbox"
              name="notice"
              value={notice.id}
              defaultChecked={box}
              aria-label={`${LETTER_WORDS[notice.kind]} to ${name}`}
            />
          )}
        </td>
      )}
      <th scope="row">
        {name}
        {words === "" ? null : <span className="muted"> ({words})</span>}
      </th>
      <td data-label="Because">{whyWords(file, row)}</td>
      <td data-label="Address">
        {noMail === null ? address : <span className="mend">No mail: {noMail}</span>}
        {noEmail === null ? null : <Beneath>{noEmail}</Beneath>}
        {noMail !== null && noEmail !== null ? (
          <span className="strong"> Deliver by hand or post it.</span>
        ) : null}
      </td>
      <td data-label="Status">
        <Status lineId={lineId} row={row} />
      </td>
    </tr>
  );
}

function whyWords(file: LineFile, { recipient, isProposed, isCopy }: BatchRow): string {
  const { partyId, propertyId, tieInId } = recipient;
  const stake = propertyId === null ? "public agency" : stakeAt(file, partyId, propertyId);
  const about = tieInId === null ? "" : `, about tie-in ${tieInName(file, tieInId)}`;
  return `${isCopy ? "copy for their file, as " : ""}${stake}${about}${isProposed ? "" : "; added by the office"}`;
}

function Status({ lineId, row }: { readonly lineId: string; readonly row: BatchRow }) {
  const { notice, standing, answered, attempt, gaps } = row;
  if (notice === null || standing === "none") return <span className="muted">not written</span>;
  return (
    <>
      <Link href={`/lines/${lineId}/notices/letter/${notice.id}`}>{TOLD_WORDS[standing]}</Link>
      {attempt === null ? null : `, ${METHOD_WORDS[attempt.method]}`}
      {answered ? ", answered" : null}
      <GapList gaps={gaps} />
    </>
  );
}
