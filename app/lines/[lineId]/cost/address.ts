import type { SplitRule, UnknownShares } from "#lib/domain/facts/split.ts";
import { plainFeet } from "#lib/domain/length/station.ts";
import type { Particulars } from "./particulars.ts";

/** A page or route under the cost question that keeps what two of the rules are tried out with. */
export function costAddress(
  lineId: string,
  slug: string,
  { faultStation, payerId }: Particulars,
  more: { readonly rule?: SplitRule; readonly unknown?: UnknownShares } = {},
): string {
  const query = new URLSearchParams({
    ...(faultStation === null ? {} : { fault: plainFeet(faultStation) }),
    ...(payerId === null ? {} : { payer: payerId }),
    ...more,
  }).toString();
  return `/lines/${lineId}/cost/${slug}${query === "" ? "" : `?${query}`}`;
}
