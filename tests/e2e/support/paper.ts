import { execFileSync } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import type { Page } from "@playwright/test";

/** A PDF as another program reads it. */
export interface Paper {
  readonly text: string;
  readonly pages: number;
  /** What the reader complains of; empty for a sound file. */
  readonly complaints: string;
  readonly fonts: readonly string[];
}

/** Fetches the stored file behind a link, with the page's own sign-in, and reads it with poppler and qpdf. */
export async function readPaper(page: Page, uploadId: string): Promise<Paper> {
  const answer = await page.request.get(
    new URL(page.url()).pathname.replace(/^(\/lines\/[^/]+).*$/, `$1/uploads/${uploadId}`),
  );
  if (!answer.ok()) throw new Error(`The stored file answered ${answer.status()}`);
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-paper-"));
  const file = path.join(folder, "paper.pdf");
  fs.writeFileSync(file, await answer.body());
  const run = (program: string, args: string[]) =>
    execFileSync(program, args, { encoding: "utf8" });
  const paper = {
    text: run("pdftotext", ["-layout", file, "-"]),
    pages: Number(/Pages:\s+(\d+)/.exec(run("pdfinfo", [file]))?.[1] ?? 0),
    complaints: run("qpdf", ["--check", file]).includes("No syntax or stream encoding errors")
      ? ""
      : "broken",
    fonts: run("pdffonts", [file]).trim().split("\n").slice(2),
  };
  fs.rmSync(folder, { recursive: true, force: true });
  return paper;
}

/** The id at the end of a link to a finished paper. */
export function paperId(href: string | null): string {
  const id = /\/([^/]+)$/.exec(href ?? "")?.[1];
  if (!id) throw new Error(`No paper behind ${href}`);
  return id;
}
