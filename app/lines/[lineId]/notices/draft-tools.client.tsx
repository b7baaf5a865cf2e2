"use client";

import { useRef } from "react";
import { JobButton, type JobStart } from "#app/_components/job-button.client.tsx";

/** Selects or clears every box of the form around it that has this name. */
export function TickAll({ name }: { readonly name: string }) {
  return (
    <input
      type="checkbox"
      defaultChecked
      aria-label="Select all"
      onChange={({ currentTarget }) => {
        for (const box of boxesOf(currentTarget.form, name)) box.checked = currentTarget.checked;
      }}
    />
  );
}

function boxesOf(form: HTMLFormElement | null, name: string): HTMLInputElement[] {
  return [...(form?.elements ?? [])].filter(
    (element): element is HTMLInputElement =>
      element instanceof HTMLInputElement && element.type === "checkbox" && element.name === name,
  );
}

/** Makes one PDF of what is selected in the form around it: of letters, unless said otherwise. */
export function PrintChosen({
  name,
  lineId,
  print,
  words = "Print selected as one PDF",
  none = "Select the letters to print.",
}: {
  readonly name: string;
  readonly lineId: string;
  readonly print: (ids: readonly string[]) => Promise<JobStart>;
  readonly words?: string;
  /** Said where nothing is selected. */
  readonly none?: string;
}) {
  const place = useRef<HTMLDivElement>(null);
  function start(): Promise<JobStart> {
    const form = place.current?.closest("form") ?? null;
    const ids = boxesOf(form, name)
      .filter((box) => box.checked)
      .map((box) => box.value);
    if (ids.length === 0) {
      return Promise.resolve({ ok: false, message: none });
    }
    return print(ids);
  }
  return (
    <div ref={place}>
      <JobButton start={start} working="Making the PDF" paper={`/lines/${lineId}/notices/paper`}>
        {words}
      </JobButton>
    </div>
  );
}
