import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Door } from "#lib/domain/rollcall/roll-call.ts";
import { propertyName } from "../../names.ts";

export const DOOR_STATE_WORDS: Record<Door["state"], string> = {
  "not-asked": "Not reached",
  "not-reached": "Tried, not reached",
  "other-hours": "Told other hours",
  "needs-help": "Needs help",
  "call-first": "Need on file: call first",
  reached: "Aware",
  waived: "Waived",
};

/** `16 Fennel Row, Unit A`. */
export function doorName(
  file: Pick<LineFile, "properties" | "units">,
  { propertyId, unitId }: Pick<Door, "propertyId" | "unitId">,
): string {
  const units = file.units.filter((unit) => unit.propertyId === propertyId);
  const at = units.findIndex(({ id }) => id === unitId);
  const unit = at < 0 ? "" : units[at]?.name || `unit ${at + 1}`;
  return [propertyName(file, propertyId), unit].filter((part) => part !== "").join(", ");
}

/** What was said at a door and by whom: `Ana Ruiz: “Fine with me”.`, or only whom one spoke with. */
export function saidAtDoor({
  spokeWith,
  words,
}: {
  readonly spokeWith: string;
  readonly words: string;
}): string {
  const said = words === "" ? "" : `“${words}”`;
  if (spokeWith === "") return said;
  return said === "" ? `Spoke with ${spokeWith}.` : `${spokeWith}: ${said}`;
}
