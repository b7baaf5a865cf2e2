import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { PermitRecord, RecordEntry } from "#lib/domain/facts/record.ts";
import type { TieInFinding } from "#lib/domain/findings/report.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import type { CompassPoint } from "#lib/domain/plan/compass.ts";
import { sideWords } from "#lib/domain/plan/side-words.ts";

/** `T3, 74.5 ± 1.0 ft, left`. */
export function tieInWords(finding: TieInFinding): string {
  return `${finding.tieIn.label}, ${placeWords(finding)}`;
}

/** `74.5 ± 1.0 ft, left`; `not tied to the main` where no run ties it to the line. */
export function placeWords(finding: TieInFinding): string {
  const side = sideOf(finding);
  return side === "" ? stationOf(finding) : `${stationOf(finding)}, ${side}`;
}

/** `26.0 ± 1.0 ft`. */
export function stationOf({ station, uncertainty }: TieInFinding): string {
  if (station === null) return "not tied to the main";
  const sure = uncertainty === null ? "" : ` ± ${plainFeet(uncertainty)}`;
  return `${plainFeet(station)}${sure} ft`;
}

/** `left, north side`; empty where the side is unknown. */
export function sideOf({ side, compass }: TieInFinding): string {
  return side === "unknown" ? "" : sideWords(side, compass);
}

/** `House 14 on Side sewer card 1184`. */
export function entryWords(
  file: Pick<LineFile, "entries" | "records">,
  entryId: string,
  compass: CompassPoint | null,
): { label: string; record: string; place: string } {
  const entry = file.entries.find((each) => each.id === entryId);
  const record = file.records.find((each) => each.id === entry?.recordId);
  if (entry === undefined) return { label: "an entry", record: "", place: "" };
  const side = entry.side === "unknown" ? "" : `, ${sideWords(entry.side, compass)}`;
  const place =
    entry.distance === null ? "no distance" : `${recordedWords(entry)}${fromWords(record)}`;
  return { label: entry.label, record: record?.title ?? "", place: `${place}${side}` };
}

/** A distance that does not count from the main says from where, so that nobody reads it as a station. */
function fromWords(record: PermitRecord | undefined): string {
  if (record?.measuredFrom === "upper-end") return " from the upper end";
  return record?.measuredFrom === "unknown" ? " as written, from an unknown end" : "";
}

/** `21.0 ft`, and `21.0 ± 1.0 ft` where the record says itself that it may be off. */
function recordedWords({ distance, uncertainty }: RecordEntry): string {
  const at = distance ?? 0;
  return uncertainty === null ? formatFeet(at) : `${plainFeet(at)} ± ${formatFeet(uncertainty)}`;
}
