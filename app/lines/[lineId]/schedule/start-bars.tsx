import type { EarliestStart } from "#lib/domain/clocks/earliest-start.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";

/** The earliest start in a sentence, and each thing that stands against an earlier one. */
export function StartBars({
  start,
  today,
}: {
  readonly start: EarliestStart;
  readonly today: string;
}) {
  return (
    <div className="stack">
      <p className="lead">{start.sentence}</p>
      {start.bars.length === 0 ? null : (
        <table className="plain">
          <thead>
            <tr>
              <th scope="col">Not before</th>
              <th scope="col">Because</th>
            </tr>
          </thead>
          <tbody>
            {start.bars.map((bar) => (
              <tr key={bar.because}>
                <th scope="row" className="nowrap">
                  {bar.until === null ? "it is settled" : formatDay(bar.until, today)}
                </th>
                <td>
                  {capital(bar.because)}.{bar.sentence === "" ? null : <> {bar.sentence}</>}
                  {bar.citation === "" ? null : <span className="muted"> ({bar.citation})</span>}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  );
}
