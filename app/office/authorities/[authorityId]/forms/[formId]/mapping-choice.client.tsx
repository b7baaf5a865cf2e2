"use client";

import { useState } from "react";
import type { FormField, FormMapping } from "#lib/domain/facts/form.ts";
import { FROM_FACT, sourceValue } from "./source-value.ts";

/** A fact that a form may ask for, as a page needs it. */
export interface FactChoice {
  readonly key: string;
  readonly words: string;
  readonly group: string;
  readonly repeats: boolean;
  /** Of a choice: every value with its words; null for any other fact. */
  readonly values: readonly (readonly [string, string])[] | null;
}

interface RowProps {
  /** The field's number in this version, from 0. */
  readonly at: number;
  readonly field: Pick<FormField, "kind" | "options">;
  readonly title: string;
  readonly mapping: FormMapping | null;
  /** What its name suggests, in words; empty where it suggests nothing. */
  readonly suggested: string;
  readonly facts: readonly FactChoice[];
}

/** What goes into one field: where it comes from, then what that wants to know. */
export function MappingChoice({ at, field, title, mapping, suggested, facts }: RowProps) {
  const [from, setFrom] = useState(sourceValue(mapping));
  const fact = facts.find(({ key }) => from === `${FROM_FACT}${key}`) ?? null;
  const groups = [...new Set(facts.map(({ group }) => group))];
  return (
    <div className="stack-tight">
      <input type="hidden" name="at" value={at} />
      <select
        className="input"
        name={`from.${at}`}
        aria-label={`What goes into ${title}`}
        value={from}
        onChange={(event) => setFrom(event.target.value)}
      >
        <option value="">not decided</option>
        <option value="typed">typed on each line</option>
        <option value="blank">left empty: for the authority, or by hand</option>
        <option value="words">the same on every line</option>
        {groups.map((group) => (
          <optgroup key={group} label={group}>
            {facts
              .filter((each) => each.group === group)
              .map(({ key, words }) => (
                <option key={key} value={`${FROM_FACT}${key}`}>
                  {words}
                </option>
              ))}
          </optgroup>
        ))}
      </select>
      {from === "" && suggested !== "" ? (
        <span className="muted small">Suggested: {suggested}</span>
      ) : null}
      {from === "words" ? (
        <FixedWords at={at} field={field} title={title} words={mapping?.words ?? ""} />
      ) : null}
      {fact?.repeats && field.kind === "text" ? (
        <label className="small">
          Which one (0: all of them){" "}
          <input
            className="input"
            name={`row.${at}`}
            inputMode="numeric"
            style={{ maxWidth: "6ch" }}
            defaultValue={mapping?.row ?? 1}
          />
        </label>
      ) : null}
      {fact !== null && field.kind !== "text" ? (
        <Meanings at={at} field={field} mapping={mapping} fact={fact} />
      ) : null}
    </div>
  );
}

const CHECKS = [
  ["yes", "checked"],
  ["no", "not checked"],
] as const;

function FixedWords({
  at,
  field,
  title,
  words,
}: Pick<RowProps, "at" | "field" | "title"> & { readonly words: string }) {
  const named = { name: `words.${at}`, "aria-label": `Always in ${title}`, className: "input" };
  if (field.kind === "text") return <input {...named} defaultValue={words} autoComplete="off" />;
  const options: readonly (readonly [string, string])[] =
    field.kind === "check" ? CHECKS : field.options.map((option) => [option, option]);
  return (
    <select {...named} defaultValue={words}>
      {options.map(([value, said]) => (
        <option key={value} value={value}>
          {said}
        </option>
      ))}
    </select>
  );
}

/** Which of the fact's values checks the box, or selects which option. */
function Meanings({
  at,
  field,
  mapping,
  fact,
}: Pick<RowProps, "at" | "field" | "mapping"> & { readonly fact: FactChoice }) {
  const when = mapping?.fact === fact.key ? mapping.when : [];
  if (field.kind === "check" && fact.values !== null)
    return (
      <fieldset className="stack-tight small">
        <legend>Checked for</legend>
        {fact.values.map(([value, words]) => (
          <label key={value} className="check">
            <input
              type="checkbox"
              name={`value.${at}`}
              value={value}
              defaultChecked={when.some((each) => each.value === value)}
            />
            <span>{words}</span>
          </label>
        ))}
      </fieldset>
    );
  if (field.kind === "check")
    return (
      <label className="small">
        Checked if it reads{" "}
        <input className="input" name={`says.${at}`} defaultValue={when[0]?.value ?? ""} />
      </label>
    );
  if (fact.values !== null)
    return fact.values.map(([value, words]) => (
      <label key={value} className="small">
        {words}:{" "}
        <select
          className="input"
          name={`option.${at}.${value}`}
          defaultValue={when.find((each) => each.value === value)?.option ?? ""}
        >
          <option value="">none of them</option>
          {field.options.map((option) => (
            <option key={option}>{option}</option>
          ))}
        </select>
      </label>
    ));
  return field.options.map((option, number) => (
    <label key={option} className="small">
      “{option}” if it reads{" "}
      <input
        className="input"
        name={`says.${at}.${number}`}
        defaultValue={when.find((each) => each.option === option)?.value ?? ""}
      />
    </label>
  ));
}
