"use client";

import { type ReactNode, useId } from "react";
import { useFormView } from "./action-form.client.tsx";

export interface FieldProps {
  readonly label: string;
  readonly name: string;
  readonly defaultValue?: string | number | undefined;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  /** A value that is obviously an example; shown while the field is empty. */
  readonly example?: string | undefined;
  readonly type?: "text" | "email" | "tel" | "date" | "password" | "number" | "search" | "url";
  readonly required?: boolean | undefined;
  /** Said beside the name of a required field, where the page is not in English. */
  readonly requiredWord?: string | undefined;
  /** More than one line: how many to show. */
  readonly rows?: number | undefined;
  /** Shown after the field, say `ft`; a `$` stands before it. */
  readonly unit?: string | undefined;
  /** In characters. */
  readonly width?: number | undefined;
  readonly autoComplete?: string | undefined;
  readonly inputMode?: "text" | "decimal" | "numeric" | "tel" | "email" | undefined;
  readonly min?: number | string | undefined;
  readonly max?: number | string | undefined;
  readonly minLength?: number | undefined;
}

interface Option {
  readonly value: string;
  readonly label: string;
}

export interface ChoiceProps {
  readonly label: string;
  readonly name: string;
  readonly options: readonly Option[];
  readonly defaultValue?: string | undefined;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly required?: boolean | undefined;
}

export function FieldBox(props: FieldProps) {
  const { name, rows, defaultValue, type = "text", required, unit } = props;
  const box = useFieldBox(props);
  const shared = {
    id: box.id,
    name,
    required,
    className: "input",
    "data-says": "",
    defaultValue: box.typed ?? defaultValue ?? "",
    "aria-invalid": box.error === undefined ? undefined : true,
    "aria-describedby": box.describedBy,
    placeholder: props.example === undefined ? undefined : `e.g. ${props.example}`,
  } as const;
  return (
    <Framed
      {...box}
      label={props.label}
      hint={props.hint}
      required={required}
      word={props.requiredWord}
    >
      {rows === undefined ? (
        <span className={unit === undefined ? "input-line" : "input-line input-unit"}>
          {unit === "$" ? <span className="muted">$</span> : null}
          <input
            {...shared}
            type={type}
            autoComplete={props.autoComplete ?? "off"}
            inputMode={props.inputMode}
            min={props.min}
            max={props.max}
            minLength={props.minLength}
            style={props.width === undefined ? undefined : { maxWidth: `${props.width + 3}ch` }}
          />
          {unit === undefined || unit === "$" ? null : <span className="muted">{unit}</span>}
        </span>
      ) : (
        <textarea {...shared} rows={rows} />
      )}
    </Framed>
  );
}

export function ChoiceBox(props: ChoiceProps) {
  const box = useFieldBox(props);
  return (
    <Framed {...box} label={props.label} hint={props.hint} required={props.required}>
      <select
        key={box.typed ?? "as-given"}
        id={box.id}
        name={props.name}
        required={props.required}
        className="input"
        data-says=""
        defaultValue={box.typed ?? props.defaultValue ?? ""}
        aria-invalid={box.error === undefined ? undefined : true}
        aria-describedby={box.describedBy}
      >
        {props.options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </Framed>
  );
}

interface Box {
  readonly id: string;
  readonly typed: string | undefined;
  readonly error: string | undefined;
  readonly describedBy: string | undefined;
}

function useFieldBox(props: {
  readonly name: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
}): Box {
  const id = useId();
  const { state, pending } = useFormView();
  const mine = state.status === "refused" && state.path === props.name && !pending;
  const error = props.error ?? (mine ? state.message : undefined);
  const parts = [
    props.hint === undefined ? "" : `${id}-hint`,
    error === undefined ? "" : `${id}-error`,
  ].filter((part) => part !== "");
  return {
    id,
    typed: state.values[props.name],
    error,
    describedBy: parts.length === 0 ? undefined : parts.join(" "),
  };
}

function Framed({
  id,
  label,
  hint,
  error,
  required,
  word = "required",
  children,
}: {
  readonly id: string;
  readonly label: string;
  readonly hint: string | undefined;
  readonly error: string | undefined;
  readonly required: boolean | undefined;
  readonly word?: string | undefined;
  readonly children: ReactNode;
}) {
  return (
    <div className="field">
      <label htmlFor={id}>
        {label}
        {required === true ? <span className="muted needed"> {word}</span> : null}
      </label>
      {hint === undefined ? null : (
        <span id={`${id}-hint`} className="hint">
          {hint}
        </span>
      )}
      {children}
      {error === undefined ? null : (
        <span id={`${id}-error`} className="mend">
          {error}
        </span>
      )}
    </div>
  );
}
