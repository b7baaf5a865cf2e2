import type { ReactNode } from "react";
import { Heads } from "#app/_components/heads.tsx";
import { SelectableRow } from "#app/_components/row-select.client.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import stacks from "#app/_components/stacks.module.css";
import { flowStretches, gallons, speeds } from "#lib/domain/capacity/flow.ts";
import { loadWords } from "#lib/domain/capacity/load.ts";
import { waterWords } from "#lib/domain/capacity/slopes.ts";
import { LOAD_VERDICT_WORDS, percentOf, SLOPE_VERDICT_WORDS } from "#lib/domain/capacity/words.ts";
import { MATERIAL_WORDS } from "#lib/domain/facts/line-words.ts";
import type { Capacity, ReachCapacity } from "#lib/domain/findings/capacity.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import { loadId, slopeId } from "#lib/domain/strip/capacity-band.ts";
import { counted } from "../../names.ts";
import { LongSection } from "./long-section.tsx";

/** Stands with every block of results. */
function Result({ children }: { readonly children: ReactNode }) {
  return (
    <>
      {children}
      <p className="small muted">Not a design.</p>
    </>
  );
}

export function SlopeResults({ capacity }: { readonly capacity: Capacity }) {
  const { levels, slopes } = capacity;
  const cautions = levels.flatMap(({ caution }) => (caution === "" ? [] : [caution]));
  if (slopes.length === 0 && cautions.length === 0) return null;
  return (
    <Section
      title="Slope"
      note="From each level to the next. A slope passes only if it passes in the worst case of the level uncertainty. Stations are used as entered."
    >
      {cautions.length === 0 ? null : (
        <ul>
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
      {slopes.length === 0 ? null : (
        <Result>
          <LongSection capacity={capacity} />
          <SlopeTable slopes={slopes} />
        </Result>
      )}
    </Section>
  );
}

function SlopeTable({ slopes }: Pick<Capacity, "slopes">) {
  return (
    <Scroll>
      <table className={`plain ${stacks["stacks"]}`}>
        <Heads of={["Between", "Result", "Slope", "Reason"]} />
        <tbody>
          {slopes.map(({ from, to, verdict, slope, sentence }) => (
            <SelectableRow key={from} id={slopeId({ from })}>
              <th scope="row" className="nowrap">
                {plainFeet(from)}–{formatFeet(to)}
              </th>
              <td data-label="Result">
                <span className="tag">{SLOPE_VERDICT_WORDS[verdict]}</span>
              </td>
              <td data-label="Slope">{percentOf(slope)}</td>
              <td data-label="Reason" className="small">
                {sentence}
              </td>
            </SelectableRow>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

export function LoadResults({ capacity }: { readonly capacity: Capacity }) {
  const loaded = capacity.reaches.flatMap((reach) =>
    reach.load === null || reach.load.verdict === "nothing-counted"
      ? []
      : [{ reach, found: reach.load }],
  );
  if (loaded.length === 0) return null;
  return (
    <Section
      title="Load"
      foldedOnPhone={counted(loaded.length, "section")}
      note="Drainage fixture units of everyone whose flow passes, compared with what the code table allows for a pipe of this size and slope."
    >
      <Result>
        <Scroll>
          <table className={`plain ${stacks["stacks"]}`}>
            <Heads of={["Section", "Pipe", "Result", "Load", "Reason"]} />
            <tbody>
              {loaded.map(({ reach, found }) => (
                <SelectableRow key={reach.from} id={loadId(reach)}>
                  <ReachHead reach={reach} />
                  <td data-label="Result">
                    <span className="tag">{LOAD_VERDICT_WORDS[found.verdict]}</span>
                  </td>
                  <td data-label="Load" className="nowrap">
                    {loadWords(found.load)}
                  </td>
                  <td data-label="Reason" className="small">
                    <details>
                      <summary>
                        Show<span className="hidden"> the reason</span>
                      </summary>
                      {found.sentence}
                    </details>
                  </td>
                </SelectableRow>
              ))}
            </tbody>
          </table>
        </Scroll>
      </Result>
    </Section>
  );
}

function ReachHead({
  reach,
}: {
  readonly reach: Pick<ReachCapacity, "from" | "to" | "diameter" | "material">;
}) {
  const { from, to, diameter, material } = reach;
  return (
    <>
      <th scope="row" className="nowrap">
        {plainFeet(from)}–{formatFeet(to)}
      </th>
      <td data-label="Pipe">
        {diameter === null ? "size unknown" : `${diameter} in`} {MATERIAL_WORDS[material]}
      </td>
    </>
  );
}

export function FlowResults({ capacity }: { readonly capacity: Capacity }) {
  const flowing = flowStretches(capacity.reaches);
  const dipped = capacity.slopes.filter(({ water }) => water.length > 0);
  if (flowing.length === 0 && dipped.length === 0) return null;
  return (
    <Section
      title="What a clean pipe carries"
      folded="full and half full, by Manning’s formula"
      note="By Manning’s formula, from roughest to smoothest usual value for the material. Debris in the pipe is not included."
    >
      {dipped.map(({ from, to, water }) => (
        <p key={from}>
          From {plainFeet(from)} to {formatFeet(to)}: {waterWords(water)}; no flow is calculated for
          a dip.
        </p>
      ))}
      {flowing.length === 0 ? null : <FlowTable flowing={flowing} />}
    </Section>
  );
}

function FlowTable({ flowing }: { readonly flowing: ReturnType<typeof flowStretches> }) {
  return (
    <Result>
      <Scroll>
        <table className={`plain ${stacks["stacks"]}`}>
          <Heads
            of={[
              "Section",
              "Pipe",
              "Slope",
              "n",
              "Running full",
              "Half full",
              "Full, over the slope’s uncertainty",
            ]}
          />
          <tbody>
            {flowing.map(({ flow, slope, ...reach }) => (
              <tr key={reach.from}>
                <ReachHead reach={reach} />
                <td data-label="Slope">{percentOf(slope.slope)}</td>
                <td data-label="n">{flow.roughness.join(" to ")}</td>
                <td data-label="Running full">
                  {gallons(flow.full)}, {speeds(flow.full)}
                </td>
                <td data-label="Half full">
                  {gallons(flow.half)}, {speeds(flow.half)}
                </td>
                <td data-label="Full, over the slope’s uncertainty">{gallons(flow.fullWithin)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </Result>
  );
}

export function ObstructionResults({ capacity }: { readonly capacity: Capacity }) {
  if (capacity.obstructions.length === 0) return null;
  return (
    <Section
      title="Capacity left with debris in the pipe"
      note="From debris, blockages, roots and connections sticking in, where the log says how much: in its “% blocked”, or in a note as “40%” or “2 in deep”."
    >
      <Result>
        <ul>
          {capacity.obstructions.map(({ observationId, sentence }) => (
            <li key={observationId}>{sentence}</li>
          ))}
        </ul>
      </Result>
    </Section>
  );
}
