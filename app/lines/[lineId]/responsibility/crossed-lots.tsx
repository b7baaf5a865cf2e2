import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { Crossing } from "#lib/domain/facts/line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import { crossingUses } from "#lib/domain/responsibility/crossing-uses.ts";
import { propertyName } from "../names.ts";

/** Every lot that the pipe crosses: whether its owner uses the pipe, what right it lies there by, and what follows. */
export function CrossedLots({
  file,
  report,
}: {
  readonly file: LineFile;
  readonly report: Report;
}) {
  return (
    <Scroll>
      <table className={`plain ${stacks["stacks"]}`}>
        <Heads of={["Lot", "Crossed", "Easement", "What this means"]} />
        <tbody>
          {crossingUses(file, report.reaches).map(({ crossing, uses }) => (
            <tr key={crossing.id}>
              <th scope="row">{propertyName(file, crossing.propertyId)}</th>
              <td data-label="Crossed" className="nowrap">
                {plainFeet(crossing.from)}–{formatFeet(crossing.to)}
              </td>
              <td data-label="Easement">
                <Easement crossing={crossing} />
              </td>
              <td data-label="What this means">
                {USE_WORDS[uses]} {RIGHT_WORDS[crossing.easement]}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Easement({ crossing }: { readonly crossing: Crossing }) {
  if (crossing.easement === "recorded")
    return (
      <>
        recorded
        {crossing.recordingNumber === ""
          ? ", number not recorded"
          : ` as ${crossing.recordingNumber}`}
      </>
    );
  return (
    <span className="tag tag-loud">
      {crossing.easement === "none" ? "none recorded" : "unknown"}
    </span>
  );
}

const USE_WORDS = {
  none: "Its owner does not use the line. Being crossed adds no share here; an agreement that names the lot does.",
  elsewhere:
    "Its owner uses the line, but not on this section; as a user, it shares as the rule says.",
  here: "The owner’s own flow passes here too.",
} as const;

const RIGHT_WORDS = {
  recorded: "Work stays within the easement; the owner is notified before entry.",
  none: "No one digs there without the owner’s written consent; ask permission to enter and dig by letter.",
  unknown:
    "Look up the easement at the county recorder’s office. Until it is known, no one digs there without the owner’s consent.",
} as const;
