"use client";

import { useState } from "react";
import {
  type Anchor,
  DIRECTIONS,
  type Direction,
  FOOTAGE_FROM,
  type FootageFrom,
  type Run,
  SELF_LEVELING,
  type SelfLeveling,
} from "#lib/domain/facts/run.ts";
import { resultWords } from "#lib/domain/run/way-words.ts";
import { SELF_LEVELING_WORDS } from "../field-terms.ts";
import styles from "./run-way.module.css";
import { WayDrawing } from "./way-drawing.tsx";

const LOOKS_WORDS: Record<Direction, string> = {
  downstream: "Toward the main (downstream)",
  upstream: "Up the line, away from the main (upstream)",
};

const ZEROED_WORDS: Record<FootageFrom, string> = {
  access: "Where the camera went in",
  main: "At the main: pushed to it, then pulled back",
};

/** A reading that stands for any. */
const SAMPLE = 3_150;

/** How a run was made, as a technician would say it, with a sketch and what follows from it. */
export function RunWayFields({
  run,
  anchors,
}: {
  readonly run: Run;
  /** Those of the run. */
  readonly anchors: readonly Anchor[];
}) {
  const [looks, setLooks] = useState(run.looks);
  const [measuredFrom, setMeasuredFrom] = useState(run.measuredFrom);
  const [selfLeveling, setSelfLeveling] = useState(run.selfLeveling);
  const said = { looks, measuredFrom };
  return (
    <div className={styles["way"]}>
      <div className={styles["asked"]}>
        <Ask
          legend="Which way was the camera looking?"
          name="looks"
          options={DIRECTIONS.toReversed().map((value) => [value, LOOKS_WORDS[value]])}
          chosen={looks}
          choose={setLooks}
        />
        <Ask
          legend="Where was the counter zeroed?"
          name="measuredFrom"
          options={FOOTAGE_FROM.map((value) => [value, ZEROED_WORDS[value]])}
          chosen={measuredFrom}
          choose={setMeasuredFrom}
        />
        <Ask<SelfLeveling>
          legend="Self-leveling head?"
          name="selfLeveling"
          options={SELF_LEVELING.map((value) => [value, SELF_LEVELING_WORDS[value]])}
          chosen={selfLeveling}
          choose={setSelfLeveling}
        />
      </div>
      <div>
        <WayDrawing {...said} />
        <p className={styles["result"]} aria-live="polite">
          {resultWords({ ...run, ...said }, anchors, SAMPLE)}
        </p>
      </div>
    </div>
  );
}

function Ask<T extends string>({
  legend,
  name,
  options,
  chosen,
  choose,
}: {
  readonly legend: string;
  readonly name: string;
  readonly options: readonly (readonly [T, string])[];
  readonly chosen: T;
  readonly choose: (value: T) => void;
}) {
  return (
    <fieldset>
      <legend>{legend}</legend>
      {options.map(([value, words]) => (
        <label key={value}>
          <input
            type="radio"
            name={name}
            value={value}
            checked={chosen === value}
            onChange={() => choose(value)}
          />
          <span>{words}</span>
        </label>
      ))}
    </fieldset>
  );
}
