import { trenchDepth } from "../capacity/trench.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import { sayWhere } from "../length/stretch.ts";
import { formatCents } from "../money/format-cents.ts";
import { sayCount } from "../say/count.ts";
import { mustChooseOption, scopeTotal } from "../sharing/scope-in-force.ts";
import { deepestBetween, notedDepths, safeDepth } from "../split/depth.ts";
import { isDug, stretchOf } from "../split/work-deeds.ts";
import {
  type Answer,
  anyOf,
  type ConditionSite,
  NO_WORK,
  no,
  unknown,
  unsureWords,
  workOf,
  yes,
} from "./answer.ts";

/** Whether a trench is deeper than a limit: the depth of the pipe and what lies below it. */
export function depthOver(site: ConditionSite, limit: Cft): Answer {
  const work = workOf(site);
  if (work.length === 0) return NO_WORK;
  const noted = notedDepths(site.file);
  const dug = work.filter(({ item }) => isDug(item, site.file));
  const answers = dug.flatMap(({ item, sure }): Answer[] => {
    const stretch = stretchOf(item, site);
    const from = stretch?.from ?? 0;
    const to = stretch?.to ?? site.file.line.upperEnd;
    const place = to === null ? null : deepestBetween(noted, from, to);
    if (place === null) return [unknown(`no depth is noted where “${item.title}” digs`)];
    const depth = trenchDepth(safeDepth(place));
    if (depth > limit) {
      const words = `the trench ${sayWhere({ from: place.station, to: place.station })} is about ${formatFeet(depth)} deep`;
      return [sure ? yes(words) : unknown(unsureWords(item))];
    }
    return place.by === "nearest" ? [unknown(`no depth is noted where “${item.title}” digs`)] : [];
  });
  const none =
    dug.length === 0 ? "nothing is dug" : `no trench is deeper than ${formatFeet(limit)}`;
  return anyOf(answers, no(none));
}

/** Whether more buildings are connected than a limit, in hundredths. */
export function buildingsOver({ file }: ConditionSite, limit: number): Answer {
  const connected = file.properties.filter(({ stake }) => stake === "connected").length;
  const maybe = file.properties.filter(({ stake }) => stake === "candidate").length;
  const words = `${sayCount(connected, "property is", "properties are")} connected`;
  if (connected * 100 > limit) return yes(words);
  if ((connected + maybe) * 100 > limit)
    return unknown(`${words}, and ${sayCount(maybe, "more property", "more properties")} may be`);
  return connected === 0 ? unknown("no connected property is entered") : no(words);
}

/** Whether the work is worth more than a limit in cents. */
export function valueOver({ file }: ConditionSite, limit: number): Answer {
  if (file.scope.length === 0) return NO_WORK;
  const total = scopeTotal(file);
  const words = `the work is valued at ${formatCents(total)}`;
  if (total > limit) return yes(words);
  return mustChooseOption(file) ? unknown("no repair option is selected") : no(words);
}

/** Whether a tie-in is on no record. */
export function undocumented({ tieIns }: ConditionSite): Answer {
  const open = tieIns.filter(({ standing }) => standing === "undocumented");
  const sure = open.find(({ decided }) => decided);
  if (sure !== undefined) return yes(`tie-in ${sure.tieIn.label} is undocumented`);
  const [first] = open;
  if (first !== undefined)
    return unknown(`tie-in ${first.tieIn.label} may be undocumented and is not decided`);
  const undecided = tieIns.find(({ decided }) => !decided);
  if (tieIns.length === 0) return unknown("no tie-in was seen yet");
  return undecided === undefined
    ? no("every tie-in is on record")
    : unknown(`tie-in ${undecided.tieIn.label} has not been compared with the record`);
}
