import type { ReactNode } from "react";
import stacks from "#app/_components/stacks.module.css";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Delivery, Notice } from "#lib/domain/facts/notice.ts";
import { partyName } from "../../names.ts";
import { LETTER_WORDS } from "../../terms.ts";
import { TickAll } from "../draft-tools.client.tsx";

/** Deliveries of a line that something is done to together. */
export interface DeliveriesProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly attempts: readonly Delivery[];
  readonly today: string;
}

/** One delivery with its letter and who it went to. */
export interface Attempt {
  readonly attempt: Delivery;
  readonly notice: Notice;
  readonly name: string;
}

interface Column {
  readonly title: string;
  readonly cell: (attempt: Attempt) => ReactNode;
}

/** Deliveries to select from, one a row; those of which `selects` holds are selected at first. */
export function DeliveryTable({
  file,
  attempts,
  name,
  selects,
  says,
  columns,
}: {
  readonly file: LineFile;
  readonly attempts: readonly Delivery[];
  /** What the selected ones are sent as. */
  readonly name: string;
  readonly selects: (attempt: Delivery) => boolean;
  /** What is said of a row’s check box besides its letter and its reader. */
  readonly says?: (attempt: Delivery) => string;
  readonly columns: readonly Column[];
}) {
  const rows = attempts.flatMap((attempt): Attempt[] => {
    const notice = file.notices.find(({ id }) => id === attempt.noticeId);
    return notice === undefined ? [] : [{ attempt, notice, name: partyName(file, notice.partyId) }];
  });
  return (
    <div className="scroll">
      <table className={`plain ${stacks["stacks"]}`}>
        <thead>
          <tr>
            <th scope="col">
              <TickAll name={name} />
            </th>
            <th scope="col">To</th>
            {columns.map(({ title }) => (
              <th key={title} scope="col">
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.attempt.id}>
              <td>
                <input
                  type="checkbox"
                  name={name}
                  value={row.attempt.id}
                  defaultChecked={selects(row.attempt)}
                  aria-label={`${LETTER_WORDS[row.notice.kind]} to ${row.name}${says?.(row.attempt) ?? ""}`}
                />
              </td>
              <th scope="row">{row.name}</th>
              {columns.map(({ title, cell }) => (
                <td key={title} data-label={title}>
                  {cell(row)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
