import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { BUILT_WORDS, type BuiltPart } from "#lib/domain/closing/built-parts.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { videoTime } from "#lib/domain/facts/video.ts";
import { pipeOf, placeWords } from "#lib/domain/packet/as-built.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { depthWords } from "#lib/domain/strip/draw-built.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";

/** What the as-built draws, with on whose word, and where the second video has it elsewhere. */
export function PartTable({
  parts,
  file,
  today,
}: {
  readonly parts: readonly BuiltPart[];
  readonly file: LineFile;
  readonly today: string;
}) {
  return (
    <Scroll>
      <table className="plain">
        <Heads
          of={["Work", { num: "Station, ft" }, "Pipe", "Invert, ft deep", "Per", "Second video"]}
        />
        <tbody>
          {parts.map((part) => {
            const label = file.tieIns.find(({ id }) => id === part.tieInId)?.label;
            const run = file.runs.find(({ id }) => id === part.runId);
            const what = BUILT_WORDS[part.kind];
            return (
              <tr key={part.id}>
                <th scope="row">
                  {label === undefined ? capital(what) : `${label} ${what}`}
                  {part.differs === "" ? null : <span className="tag tag-loud">◆ check</span>}
                </th>
                <td className="num">{placeWords(part)}</td>
                <td>{pipeOf(part)}</td>
                <td>{depthWords(part) || "–"}</td>
                <td>
                  {part.by}
                  {part.on === "" ? "" : `, ${formatDay(part.on, today)}`}
                </td>
                <td>
                  {run === undefined ? "–" : run.name}
                  {run === undefined || part.second === null ? "" : ` at ${videoTime(part.second)}`}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </Scroll>
  );
}
