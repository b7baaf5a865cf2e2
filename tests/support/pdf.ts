import { execFileSync } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";

/** Independent readers of a PDF: poppler and qpdf, on a file of its own. */
export interface ReadPdf {
  readonly text: (page?: number) => string;
  readonly words: (page: number) => readonly PdfWord[];
  readonly fonts: () => readonly { readonly name: string; readonly embedded: boolean }[];
  readonly images: () => readonly {
    readonly page: number;
    readonly width: number;
    readonly height: number;
  }[];
  readonly info: () => Readonly<Record<string, string>>;
  /** Throws unless qpdf finds the file sound. */
  readonly check: () => void;
}

export interface PdfWord {
  readonly text: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export function readPdf(bytes: Uint8Array): ReadPdf {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-pdf-"));
  const file = path.join(folder, "document.pdf");
  fs.writeFileSync(file, bytes);
  const run = (tool: string, ...args: string[]) =>
    // Times as they are in the document, whatever zone the test runs in.
    execFileSync(tool, args, {
      encoding: "utf8",
      stdio: ["ignore", "pipe", "pipe"],
      env: { ...process.env, TZ: "UTC" },
    });
  const one = (page?: number) =>
    page === undefined ? [] : ["-f", String(page), "-l", String(page)];
  return {
    // A space that does not break is a space to who reads.
    text: (page) => run("pdftotext", "-layout", ...one(page), file, "-").replaceAll("\u00a0", " "),
    words: (page) => parseWords(run("pdftotext", "-bbox", ...one(page), file, "-")),
    fonts: () => parseFonts(run("pdffonts", file)),
    images: () => parseImages(run("pdfimages", "-list", file)),
    info: () => parseInfo(run("pdfinfo", file)),
    check: () => {
      run("qpdf", "--check", file);
    },
  };
}

function parseWords(html: string): PdfWord[] {
  const pattern =
    /<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)<\/word>/g;
  return [...html.matchAll(pattern)].map(([, left, top, right, bottom, text = ""]) => ({
    text,
    left: Number(left),
    top: Number(top),
    right: Number(right),
    bottom: Number(bottom),
  }));
}

function parseFonts(table: string): { name: string; embedded: boolean }[] {
  return table
    .split("\n")
    .slice(2)
    .filter((line) => line.trim() !== "")
    .map((line) => {
      const [name = ""] = line.split(/\s+/);
      const embedded = line.slice(70).trim().split(/\s+/)[0] === "yes";
      return { name, embedded };
    });
}

function parseImages(table: string): { page: number; width: number; height: number }[] {
  return table
    .split("\n")
    .slice(2)
    .filter((line) => line.trim() !== "")
    .map((line) => {
      const [page, , , width, height] = line.trim().split(/\s+/);
      return { page: Number(page), width: Number(width), height: Number(height) };
    });
}

function parseInfo(text: string): Record<string, string> {
  return Object.fromEntries(
    text
      .split("\n")
      .filter((line) => line.includes(":"))
      .map((line) => {
        const at = line.indexOf(":");
        return [line.slice(0, at), line.slice(at + 1).trim()];
      }),
  );
}
