import type { ConditionFile } from "../application/answer.ts";
import { requirementApplies } from "../application/conditions.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { PermitKind } from "../facts/permit.ts";
import type { Report } from "../findings/report.ts";
import { commonStretch, joinedStretches, type Stretch, sayWhere } from "../length/stretch.ts";
import { unsaidLand } from "../line/whose-land.ts";
import { workInForce } from "../sharing/scope-in-force.ts";
import { isDug, stretchOf } from "../split/work-deeds.ts";

/** A permit that the work takes, with why. */
export interface PermitNeed {
  readonly kind: PermitKind;
  /** `the street is dug from 0.0 to 12.0 ft`, in the middle of a sentence; empty for the sewer's own. */
  readonly because: string;
  readonly citation: string;
}

type NeedFile = ConditionFile & Pick<LineFile, "requirementMarks">;

/**
 * Every kind of permit that must be in force while the work goes on: the side sewer's; the street's
 * where something is dug in the right-of-way; and each that the authority’s requirements name and that
 * may apply by their conditions. One that the office marked as not applying here is left out, with its
 * word on file, unless a condition shows that it applies.
 */
export function neededPermits(file: NeedFile, tieIns: Report["tieIns"]): PermitNeed[] {
  const asked = (file.authority?.requirements ?? []).flatMap((requirement) => {
    const { permitKind: kind } = requirement;
    if (kind === null) return [];
    const { applies: byFacts } = requirementApplies(requirement, { file, tieIns });
    return byFacts === "no" ? [] : [{ requirement, kind, byFacts }];
  });
  const applies = ({ requirement, byFacts }: (typeof asked)[number]) =>
    byFacts === "yes" ||
    file.requirementMarks.findLast((mark) => mark.requirementId === requirement.id)?.state !==
      "does-not-apply";
  const street = streetDug(file, tieIns);
  const needs: PermitNeed[] = [
    { kind: "side-sewer", because: "", citation: "" },
    ...(street.length === 0
      ? []
      : [
          {
            kind: "street-use" as const,
            because: `the street is dug ${street.map(sayWhere).join(" and ")}`,
            citation: "",
          },
        ]),
    ...asked.filter(applies).map(({ requirement, kind }) => ({
      kind,
      because: `${file.authority?.name ?? "the authority"} asks for it: ${requirement.title}`,
      citation: requirement.citation,
    })),
  ];
  const waved = new Set(asked.filter((each) => !applies(each)).map(({ kind }) => kind));
  const stays = new Set(asked.filter(applies).map(({ kind }) => kind));
  return needs.filter(
    ({ kind }, at) =>
      needs.findIndex((each) => each.kind === kind) === at && (!waved.has(kind) || stays.has(kind)),
  );
}

/** What is dug below a street: by the land as entered; where that says nothing, below its edge. */
function streetDug(file: NeedFile, tieIns: Report["tieIns"]): Stretch[] {
  const streets = file.land.filter(({ kind }) => kind === "right-of-way");
  const edge = Math.min(
    ...file.points.filter(({ kind }) => kind === "right-of-way-line").map(({ station }) => station),
  );
  const below = Number.isFinite(edge) ? unsaidLand(file, { from: 0, to: edge }) : [];
  const dug = workInForce(file)
    .filter((item) => isDug(item, file))
    .flatMap((item): (Stretch | null)[] => [stretchOf(item, { tieIns })]);
  return joinedStretches(
    [...streets, ...below].flatMap((street) =>
      dug.flatMap((each) => (each === null ? [street] : (commonStretch(street, each) ?? []))),
    ),
  );
}
