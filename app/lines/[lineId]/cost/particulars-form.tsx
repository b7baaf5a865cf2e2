import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import { propertyName } from "../names.ts";
import type { Particulars } from "./particulars.ts";

/** What the rules by fault and by single payer need; trying it out changes nothing in the file. */
export function ParticularsForm({
  lineId,
  file,
  report,
  particulars,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly particulars: Particulars;
}) {
  const faults = faultChoices(file, report);
  const fault = particulars.faultStation === null ? "" : plainFeet(particulars.faultStation);
  return (
    <form action={`/lines/${lineId}/cost/compare`} className="cluster cluster-end screen-only">
      <div className="field">
        <label htmlFor="cost-fault">Defect station (for “upstream of the defect”)</label>
        <span className="input-line">
          <input
            id="cost-fault"
            name="fault"
            className="input"
            inputMode="decimal"
            list="cost-faults"
            defaultValue={fault}
            placeholder="e.g. 33.0"
            style={{ maxWidth: "16ch" }}
          />
          <span className="muted">ft</span>
        </span>
        <datalist id="cost-faults">
          {faults.map((each) => (
            <option key={each.value} value={each.value} label={each.label} />
          ))}
        </datalist>
      </div>
      <div className="field">
        <label htmlFor="cost-payer">Payer (for “single payer”)</label>
        <select
          id="cost-payer"
          name="payer"
          className="input"
          defaultValue={particulars.payerId ?? ""}
        >
          <option value="">none</option>
          {file.properties.map((property) => (
            <option key={property.id} value={property.id}>
              {propertyName(file, property.id)}
            </option>
          ))}
        </select>
      </div>
      <button type="submit" className="button">
        Recalculate
      </button>
    </form>
  );
}

/** Every defect that was seen at a known station. */
function faultChoices(
  file: LineFile,
  report: Report,
): { readonly value: string; readonly label: string }[] {
  const choices = new Map<string, string>();
  for (const seen of report.stations) {
    const observation = file.observations.find((each) => each.id === seen.observationId);
    if (observation?.kind !== "fault" || seen.station === null) continue;
    const words = observation.fault?.replaceAll("-", " ") ?? "defect";
    choices.set(plainFeet(seen.station), `${words} at ${formatFeet(seen.station)}`);
  }
  return [...choices].map(([value, label]) => ({ value, label }));
}
