"use client";

import {
  type ClipboardEvent,
  type KeyboardEvent,
  type MouseEvent,
  useId,
  useRef,
  useState,
} from "react";
import { type CellCommand, commandOf } from "./cell-keys.ts";
import { choiceMeant, choicesOf, choicesToShow } from "./choices.ts";
import type { GridChoice, GridColumn } from "./column.ts";
import styles from "./grid.module.css";

export interface CellProps {
  readonly column: GridColumn;
  /** Row and column number, as `3:1`: how the keyboard finds it. */
  readonly place: string;
  readonly label: string;
  readonly text: string;
  readonly problem: string | null;
  readonly placeholder: string | undefined;
  readonly readOnly: boolean;
  readonly width: number;
  readonly onType: (text: string) => void;
  readonly onLeave: () => void;
  readonly onCommand: (command: CellCommand) => void;
  readonly onPasteMany: (text: string) => void;
}

/** One cell of a table, as something to type in. */
export function Cell(props: CellProps) {
  const { column, text, readOnly } = props;
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [typed, setTyped] = useState<string | null>(null);
  const [caret, setCaret] = useState(false);
  const before = useRef(text);
  const choices = choicesOf(column);
  const list = useChoiceList(choices, typed);
  // While a list shows what can be chosen, nothing is complained of yet.
  const problem = list.open && typed !== null ? null : props.problem;

  function change(next: string) {
    setTyped(next);
    if (choices.length > 0) list.openFor(input.current, null);
    props.onType(next);
  }

  function settle() {
    setTyped(null);
    setCaret(false);
    list.close();
    props.onLeave();
  }

  function choose(choice: GridChoice) {
    if (choice.label !== text || typed !== null) props.onType(choice.label);
    settle();
  }

  function cancel() {
    if (list.open && typed === null) list.close();
    else if (typed === null && !caret) props.onCommand("cancel");
    else {
      if (typed !== null) props.onType(before.current);
      settle();
      requestAnimationFrame(() => input.current?.select());
    }
  }

  function edit() {
    setCaret(true);
    const end = input.current?.value.length ?? 0;
    input.current?.setSelectionRange(end, end);
  }

  function clear() {
    props.onType("");
    settle();
  }

  /** Moves and the table's own commands: what is typed or picked is kept first. */
  function passOn(command: CellCommand) {
    const picked = typeof command === "object" ? list.picked() : null;
    if (picked === null) settle();
    else choose(picked);
    props.onCommand(command);
  }

  function obey(command: CellCommand) {
    const own: { [C in Extract<CellCommand, string>]?: () => void } = {
      cancel,
      edit,
      clear,
      toggle: () => choose({ value: "", label: text === "yes" ? "no" : "yes" }),
      "open-choices": () => list.openFor(input.current, text),
      "close-choices": list.close,
    };
    const doing = typeof command === "string" ? own[command] : undefined;
    if (doing === undefined) passOn(command);
    else doing();
  }

  function press(event: KeyboardEvent<HTMLInputElement>) {
    if (list.open && (event.key === "ArrowDown" || event.key === "ArrowUp") && !event.altKey) {
      event.preventDefault();
      list.move(event.key === "ArrowDown" ? 1 : -1);
      return;
    }
    const mode = {
      typing: typed !== null,
      caret,
      choice: choices.length > 0,
      choosing: list.open,
      yesNo: column.kind === "yesno",
    };
    const command = commandOf(event, mode);
    if (command === null || (readOnly && isWriting(command))) return;
    event.preventDefault();
    obey(command);
  }

  function paste(event: ClipboardEvent<HTMLInputElement>) {
    const pasted = event.clipboardData.getData("text/plain");
    if (readOnly || !/[\t\n]/.test(pasted.trimEnd())) return;
    event.preventDefault();
    settle();
    props.onPasteMany(pasted);
  }

  function mouse(event: MouseEvent<HTMLInputElement>) {
    if (document.activeElement === input.current && choices.length === 0) {
      setCaret(true);
    } else {
      // A choice is picked or typed over, never edited in the middle.
      event.preventDefault();
      input.current?.focus();
      if (typed === null) input.current?.select();
    }
    if (choices.length > 0 && !readOnly) list.openFor(input.current, text);
  }

  const isChoice = choices.length > 0;
  return (
    <>
      <input
        ref={input}
        data-place={props.place}
        className={styles["input"]}
        style={{ ["--least" as string]: `calc(${props.width}ch + 1.1rem)` }}
        aria-label={props.label}
        aria-invalid={problem === null ? undefined : true}
        aria-describedby={problem === null ? undefined : `${id}-problem`}
        {...(isChoice ? comboProps(id, list) : {})}
        inputMode={NUMERIC.has(column.kind) ? "decimal" : undefined}
        size={1}
        autoComplete="off"
        spellCheck={column.kind === "text"}
        readOnly={readOnly}
        placeholder={props.placeholder}
        value={typed ?? text}
        onChange={(event) => change(event.target.value)}
        onKeyDown={press}
        onPaste={paste}
        onMouseDown={mouse}
        onFocus={(event) => {
          before.current = text;
          event.target.select();
        }}
        onBlur={() => {
          const picked = typed === "" ? null : list.picked();
          if (picked === null) settle();
          else choose(picked);
        }}
      />
      {list.open ? <ChoiceList id={id} list={list} onChoose={choose} label={props.label} /> : null}
      {problem === null ? null : (
        <span id={`${id}-problem`} className={styles["problem"]}>
          {problem}
        </span>
      )}
    </>
  );
}

function comboProps(id: string, list: ChoiceListState) {
  return {
    role: "combobox",
    "aria-autocomplete": "list",
    "aria-expanded": list.open,
    "aria-controls": list.open ? `${id}-choices` : undefined,
    "aria-activedescendant":
      list.open && list.active >= 0 ? `${id}-choice-${list.active}` : undefined,
  } as const;
}

const NUMERIC = new Set(["feet", "inches", "degrees", "cents", "whole", "hundredths", "percent"]);

function isWriting(command: CellCommand): boolean {
  return typeof command === "string" && command !== "cancel";
}

interface ChoiceListState {
  readonly open: boolean;
  readonly active: number;
  readonly shown: readonly GridChoice[];
  readonly place: { readonly left: number; readonly top: number; readonly width: number };
  /** Opens it on the current choice, or on what the letters mean where some are being typed. */
  readonly openFor: (input: HTMLInputElement | null, current: string | null) => void;
  readonly close: () => void;
  readonly move: (by: number) => void;
  readonly picked: () => GridChoice | null;
}

/** Of a list that is closed nothing is looked up: a table has hundreds of them. */
const NOTHING_SHOWN: readonly GridChoice[] = [];

/** The choices under a cell: all of them, or those that go with what is typed. */
function useChoiceList(choices: readonly GridChoice[], typed: string | null): ChoiceListState {
  const [place, setPlace] = useState<ChoiceListState["place"] | null>(null);
  const [active, setActive] = useState<number | null>(null);
  const closed = place === null;
  const shown = closed ? NOTHING_SHOWN : choicesToShow(choices, typed ?? "");
  const last = shown.length - 1;
  // While letters are typed, only what they mean is picked; arrows pick by hand.
  const at = active ?? (closed ? -1 : meantAt(shown, choices, typed ?? ""));
  return {
    open: place !== null && shown.length > 0,
    active: Math.min(at, last),
    shown,
    place: place ?? { left: 0, top: 0, width: 0 },
    openFor: (input, current) => {
      if (input === null) return;
      const box = input.getBoundingClientRect();
      const room = Math.min(choices.length, 8) * 30 + 12;
      const below = box.bottom + room < window.innerHeight;
      setPlace({ left: box.left, top: below ? box.bottom : box.top - room, width: box.width });
      setActive(current === null ? null : choices.findIndex((choice) => choice.label === current));
    },
    close: () => setPlace(null),
    move: (by) =>
      setActive((Math.max(Math.min(at, last) + by, by < 0 ? -1 : 0) + shown.length) % shown.length),
    picked: () => (place === null ? null : (shown[Math.min(at, last)] ?? null)),
  };
}

/** Where among the choices shown the one stands that the letters mean; -1 for none. */
function meantAt(
  shown: readonly GridChoice[],
  choices: readonly GridChoice[],
  typed: string,
): number {
  const meant = choiceMeant(choices, typed);
  return meant.ok ? shown.indexOf(meant.value) : -1;
}

function ChoiceList({
  id,
  list,
  label,
  onChoose,
}: {
  readonly id: string;
  readonly list: ChoiceListState;
  readonly label: string;
  readonly onChoose: (choice: GridChoice) => void;
}) {
  const { left, top, width } = list.place;
  return (
    <div
      id={`${id}-choices`}
      role="listbox"
      aria-label={label}
      className={styles["choices"]}
      style={{ left, top, minWidth: width }}
    >
      {list.shown.map((choice, index) => (
        <div
          key={choice.value}
          tabIndex={-1}
          id={`${id}-choice-${index}`}
          role="option"
          aria-selected={index === list.active}
          onMouseDown={(event) => {
            event.preventDefault();
            onChoose(choice);
          }}
        >
          {choice.label === "" ? "—" : choice.label}
        </div>
      ))}
    </div>
  );
}
