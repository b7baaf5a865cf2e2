import type { LineFile } from "../facts/line-file.ts";
import type { Address } from "../facts/party.ts";
import { stateLetters } from "./address.ts";

type Place = Pick<Address, "city" | "state" | "zip">;

/**
 * Where the next property of a line most likely lies: where the last one does, else in the line's
 * town (`Alder Fork, OR`), whose ZIP is not known. Empty where neither says.
 */
export function usualPlace({
  properties,
  line,
}: {
  readonly properties: LineFile["properties"];
  readonly line: Pick<LineFile["line"], "town">;
}): Place {
  const last = properties.findLast(({ address }) => address.city.trim() !== "")?.address;
  if (last !== undefined) return { city: last.city, state: last.state, zip: last.zip };
  const town = line.town.trim();
  const comma = town.lastIndexOf(",");
  const state = comma < 0 ? "" : stateLetters(town.slice(comma + 1));
  if (state.length !== 2) return { city: town, state: "", zip: "" };
  return { city: town.slice(0, comma).trim(), state, zip: "" };
}
