"use client";

import type { ClipboardEvent, ReactNode } from "react";

/** One column of fields: several lines that are pasted into one fill those below it too. */
export function FillDown({ children }: { readonly children: ReactNode }) {
  return (
    <div className="stack-tight" onPaste={fill}>
      {children}
    </div>
  );
}

function fill(event: ClipboardEvent<HTMLDivElement>): void {
  const lines = event.clipboardData
    .getData("text")
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== "");
  const fields = [...event.currentTarget.querySelectorAll("input")];
  const from = event.target instanceof HTMLInputElement ? fields.indexOf(event.target) : -1;
  if (lines.length < 2 || from === -1) return;
  event.preventDefault();
  for (const [at, line] of lines.entries()) {
    const field = fields[from + at];
    if (field !== undefined) field.value = line;
  }
}
