import { Scroll } from "#app/_components/scroll.tsx";
import styles from "./history.module.css";
import { type Names, readDetail } from "./read-detail.ts";

/** What an entry changed, folded: before and after, side by side. */
export function EntryDetail({ detail, names }: { readonly detail: string; readonly names: Names }) {
  const lines = readDetail(detail, names);
  if (lines.length === 0) return null;
  const compares = lines.some((line) => line.before !== null);
  return (
    <details>
      <summary className="small">
        {lines.length === 1 ? "Details" : `Details (${lines.length})`}
      </summary>
      <Scroll>
        <table className={`plain small ${styles["detail"]}`}>
          <thead>
            <tr>
              <th scope="col">Field</th>
              {compares ? <th scope="col">Before</th> : null}
              <th scope="col">{compares ? "After" : "Value"}</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the lines of one entry never change
              <tr key={at}>
                <th scope="row">{line.name}</th>
                {compares ? <td>{line.before ?? ""}</td> : null}
                <td>{line.after}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}
