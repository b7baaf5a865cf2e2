import { Heads } from "#app/_components/heads.tsx";
import type { EarliestStart } from "#lib/domain/clocks/earliest-start.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";

/** Each thing that must come first, with the day until which it holds the start; else the sentence. */
export function StartBars({
  start,
  today,
}: {
  readonly start: EarliestStart;
  readonly today: string;
}) {
  return (
    <div className="stack">
      {start.bars.length === 0 ? (
        <p className="lead">{start.sentence}</p>
      ) : (
        <table className="plain">
          <Heads of={["Earliest", "Reason"]} />
          <tbody>
            {start.bars.map((bar) => (
              <tr key={bar.because}>
                <th scope="row" className="nowrap">
                  {bar.until === null ? "until resolved" : formatDay(bar.until, today)}
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
