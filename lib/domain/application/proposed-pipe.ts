import type { LayingMethod, ProposedPipe } from "../facts/application.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ScopeItem } from "../facts/scope.ts";
import type { Cft } from "../length/station.ts";
import { type ScopeFile, scopeInForce } from "../sharing/scope-in-force.ts";
import { kindsOf } from "../split/work-deeds.ts";

type PipeFile = ScopeFile & Pick<LineFile, "proposedPipes">;

/** What one piece of work puts in, and what nobody entered of it yet. */
export interface PipeProposal {
  readonly item: ScopeItem;
  /** Null: nothing is entered. */
  readonly pipe: ProposedPipe | null;
  /** As entered; else as long as the section where the work is done. */
  readonly length: Cft | null;
  /** In words for the office: `material`, `slope`. */
  readonly lacks: readonly string[];
}

export const METHOD_WORDS: Readonly<Record<LayingMethod, string>> = {
  "not-set": "not set",
  "open-trench": "open trench",
  bore: "bored",
  burst: "pipe bursting",
  liner: "liner",
  "slip-line": "slip lining",
  other: "other",
};

/** Work that puts pipe in. */
const PUTS_PIPE: readonly ScopeItem["kind"][] = ["dig-and-replace", "spot-repair", "line", "burst"];

/** The pipe that each piece of work in force puts in, or may; work without any is left out. */
export function pipeProposals(file: PipeFile): PipeProposal[] {
  return scopeInForce(file).flatMap((item): PipeProposal[] => {
    const pipes = file.proposedPipes.filter(({ itemId }) => itemId === item.id);
    const puts = kindsOf(item, file).some((kind) => PUTS_PIPE.includes(kind));
    if (pipes.length === 0)
      return puts ? [{ item, pipe: null, length: placeLength(item), lacks: ["the new pipe"] }] : [];
    return pipes.map((pipe) => {
      const length = pipe.length ?? placeLength(item);
      return { item, pipe, length, lacks: lacksOf(pipe, length) };
    });
  });
}

function placeLength({ place, from, to }: ScopeItem): Cft | null {
  return place === "stretch" && from !== null && to !== null ? Math.abs(to - from) : null;
}

/** A liner follows the old pipe: it has no slope, bedding or joints of its own. */
function lacksOf(pipe: ProposedPipe, length: Cft | null): string[] {
  const laid = pipe.method !== "liner" && pipe.method !== "slip-line";
  const wants: readonly [boolean, string][] = [
    [pipe.material !== "unknown", "material"],
    [pipe.diameter !== null, "size"],
    [length !== null, "length"],
    [pipe.method !== "not-set", "method"],
    [!laid || pipe.slope !== null, "slope"],
    [pipe.method !== "open-trench" || pipe.bedding.trim() !== "", "bedding"],
    [!laid || pipe.joint.trim() !== "", "joint"],
    [pipe.connection.trim() !== "", "connection"],
  ];
  return wants.flatMap(([there, words]) => (there ? [] : [words]));
}

/** `2% (1/4 in per ft)`: in inches too where that is a sixteenth or more. Basis points in. */
export function slopeWords(slope: number): string {
  const sixteenths = Math.round((slope / 10_000) * 12 * 16);
  const percent = `${slope / 100}%`;
  if (sixteenths === 0) return percent;
  const about = sixteenths * 10_000 === slope * 12 * 16 ? "" : "about ";
  return `${percent} (${about}${inchesOf(sixteenths)} in per ft)`;
}

function inchesOf(sixteenths: number): string {
  const whole = Math.floor(sixteenths / 16);
  let [above, below] = [sixteenths % 16, 16];
  if (above === 0) return String(whole);
  while (above % 2 === 0) [above, below] = [above / 2, below / 2];
  return whole === 0 ? `${above}/${below}` : `${whole}-${above}/${below}`;
}
