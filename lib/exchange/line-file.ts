import { createHash } from "node:crypto";
import { z } from "zod";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LIST_NAMES, type ListName } from "#lib/domain/facts/list-name.ts";
import { tooManyWords } from "#lib/domain/facts/most-rows.ts";
import { UPLOAD, type Upload } from "#lib/domain/facts/upload.ts";
import { nonsenseIn } from "#lib/domain/report/sense.ts";
import { withOwnParts } from "#lib/domain/responsibility/own-parts.ts";
import { err, ok, type Result } from "#lib/result.ts";
import { fieldsFor, type Use } from "./field.ts";
import { authorityShape, fieldsShape, lineShape, rowShapes } from "./shape.ts";
import { FORMAT_VERSION, pathAsWritten, upgraded } from "./version.ts";

// The line file: everything on one line as one JSON file. Lengths are feet with at most two decimals,
// money is whole cents, days are yyyy-mm-dd. Stored files are in it as base64. No users.

/** Something in a file that keeps it from being read. */
export interface FileProblem {
  /** Where, as `tieIns.3.station`; empty for the file as a whole. */
  readonly path: string;
  /** What is wrong and what to do. */
  readonly reason: string;
}

/** A file that was read: the facts, and the bytes of its stored files by id. */
export interface ReadFile {
  readonly file: LineFile;
  readonly contents: ReadonlyMap<string, Uint8Array>;
}

const MOST_PROBLEMS = 100;

/** A stored file comes with its bytes. */
const CONTENT = z
  .base64({ error: "Enter the file's bytes in base64" })
  .nullable()
  .default(null)
  .meta({ description: "The file's bytes in base64" });

/** What a line file holds: the facts, and the bytes of its stored files. */
interface Written extends Omit<LineFile, "uploads"> {
  readonly version: number;
  readonly uploads: readonly (Upload & { readonly content: string | null })[];
}

function fileShape(use: Use): z.ZodType<Written> {
  const shapes = {
    ...(rowShapes(use) as Readonly<Record<ListName, z.ZodType>>),
    uploads: fieldsShape(UPLOAD.fields, use).extend({ content: CONTENT }),
  };
  return fieldsFor(use).row({
    version: z
      .literal(FORMAT_VERSION, { error: `Enter ${FORMAT_VERSION}: the format's version` })
      .meta({ description: "Version of this format" }),
    line: lineShape(use),
    authority: authorityShape(use).nullable().default(null),
    ...Object.fromEntries(LIST_NAMES.map((list) => [list, shapes[list].array().default([])])),
  }) as never;
}

const Shape = fileShape("exchange");

/** The format as JSON Schema (draft 2020-12): what a file that is read may hold. */
export function lineFileSchema(): object {
  const schema = z.toJSONSchema(Shape, { io: "input", reused: "ref" });
  return { title: "Wyebook line file", ...schema };
}

/**
 * Reads a line file of this version or an earlier one. What may be left out gets its usual value. Refuses with everything that is
 * wrong: broken JSON, fields that are not known or make no sense, rows that name what is not there,
 * tie-ins in a ring, stored files whose bytes are not those of their hash.
 */
export function readLineFile(text: string): Result<ReadFile, FileProblem[]> {
  const json = parseJson(text.replace(/^\uFEFF/, ""));
  if (!json.ok) return json;
  // Before a long look at every row.
  const long = longLists(json.value);
  if (long.length > 0) return err(long);
  const parsed = Shape.safeParse(upgraded(json.value));
  if (!parsed.success)
    return err(
      problemsOf(parsed.error).map(({ path, reason }) => ({
        path: pathAsWritten(path, json.value),
        reason,
      })),
    );
  const { version: _version, uploads, authority, ...rest } = parsed.data;
  const file: LineFile = {
    ...rest,
    authority: authority === null ? null : withOwnParts(authority),
    uploads: uploads.map(({ content: _content, ...upload }): Upload => upload),
  };
  const contents = new Map(
    uploads.flatMap(({ id, content }): [string, Uint8Array][] =>
      content === null ? [] : [[id, Buffer.from(content, "base64")]],
    ),
  );
  const problems = [...senseOf(file), ...choiceProblems(file), ...contentProblems(file, contents)];
  if (problems.length > 0) return err(problems.slice(0, MOST_PROBLEMS));
  return ok({ file, contents });
}

/** Writes a line file: every field, in one fixed order, so that the same facts give the same bytes. */
export function writeLineFile({ file, contents }: ReadFile): string {
  const encoded = z.encode(Shape, {
    version: FORMAT_VERSION,
    ...file,
    uploads: file.uploads.map((upload) => {
      const bytes = contents.get(upload.id);
      return { ...upload, content: bytes ? Buffer.from(bytes).toString("base64") : null };
    }),
  });
  return `${JSON.stringify(encoded, null, 2)}\n`;
}

/** Lists that are longer than a line's can be. */
function longLists(value: unknown): FileProblem[] {
  if (typeof value !== "object" || value === null) return [];
  return LIST_NAMES.flatMap((list) => {
    const rows: unknown = (value as Readonly<Record<string, unknown>>)[list];
    const reason = Array.isArray(rows) ? tooManyWords(rows.length, list) : null;
    return reason === null ? [] : [{ path: list, reason }];
  });
}

/** Nothing in a line file lies deeper inside of one another. */
const DEEPEST = 50;

/** The value of a text in JSON, unless it is nested too deeply. */
export function parseJson(text: string): Result<unknown, FileProblem[]> {
  if (isDeeper(text, DEEPEST))
    return err([
      { path: "", reason: "This is no file of ours: its brackets are nested too deeply" },
    ]);
  try {
    return ok(JSON.parse(text));
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    return err([{ path: "", reason: `This is not JSON: ${words}` }]);
  }
}

/** Whether brackets are opened inside of one another more often than that; text in quotes is no bracket. */
function isDeeper(text: string, most: number): boolean {
  let depth = 0;
  for (let at = 0; at < text.length; at += 1) {
    const letter = text.charCodeAt(at);
    if (letter === QUOTE) at = endOfQuote(text, at);
    else if (letter === BRACKET || letter === BRACE) depth += 1;
    else if (letter === BRACKET + 2 || letter === BRACE + 2) depth -= 1;
    if (depth > most) return true;
  }
  return false;
}

const QUOTE = 34;
const BRACKET = 91;
const BRACE = 123;

function endOfQuote(text: string, start: number): number {
  for (let at = text.indexOf('"', start + 1); at !== -1; at = text.indexOf('"', at + 1)) {
    let before = at;
    while (text[before - 1] === "\\") before -= 1;
    if ((at - before) % 2 === 0) return at;
  }
  return text.length;
}

/** What a shape found wrong, each with its path. */
export function problemsOf(error: z.ZodError): FileProblem[] {
  return error.issues.slice(0, MOST_PROBLEMS).flatMap((issue) => {
    const path = issue.path.join(".");
    if (issue.code !== "unrecognized_keys") return [{ path, reason: issue.message }];
    return issue.keys.map((key) => ({
      path: path === "" ? key : `${path}.${key}`,
      reason: "There is no such field; correct its name or remove it",
    }));
  });
}

function senseOf(file: LineFile): FileProblem[] {
  return nonsenseIn(file).map(({ list, row, path, message }) => ({
    path: `${list}.${row}.${path}`,
    reason: message,
  }));
}

/** The line's authority, rule and option have to be those of the file. */
function choiceProblems({ line, authority, options }: LineFile): FileProblem[] {
  const problems: FileProblem[] = [];
  if (line.authorityId !== (authority?.id ?? null))
    problems.push({
      path: "line.authorityId",
      reason: "The file has another authority or none; add the authority with this ID",
    });
  const rules = authority?.rules ?? [];
  if (line.ruleId !== null && !rules.some(({ id }) => id === line.ruleId))
    problems.push({
      path: "line.ruleId",
      reason: "The authority has no rule with this ID; enter one of its rules, or null",
    });
  if (line.optionId !== null && !options.some(({ id }) => id === line.optionId))
    problems.push({
      path: "line.optionId",
      reason: "The file has no repair option with this ID; enter one of its options, or null",
    });
  return problems;
}

function contentProblems(
  { uploads }: LineFile,
  contents: ReadonlyMap<string, Uint8Array>,
): FileProblem[] {
  return uploads.flatMap(({ id, bytes, sha256 }, at) => {
    const content = contents.get(id);
    if (!content) return [];
    const path = `uploads.${at}.content`;
    if (content.byteLength !== bytes)
      return [
        { path, reason: `This file is damaged: ${content.byteLength} bytes; ${bytes} were stored` },
      ];
    if (createHash("sha256").update(content).digest("hex") !== sha256)
      return [
        {
          path,
          reason:
            "This file is damaged: its contents are not what was stored (the checksum differs)",
        },
      ];
    return [];
  });
}
