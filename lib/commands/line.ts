// npm run -s line -- report FILE | schema | example: the line file without a database.
import fs from "node:fs";
import { parseArgs } from "node:util";
import { reportOn } from "#lib/domain/file/report-on.ts";
import { idsBeside, withSightings } from "#lib/domain/file/with-sightings.ts";
import { EXAMPLE } from "#lib/exchange/example.ts";
import { isDay } from "#lib/exchange/field.ts";
import { latestDay } from "#lib/exchange/latest-day.ts";
import { type FileProblem, lineFileSchema, readLineFile } from "#lib/exchange/line-file.ts";
import { reportJson } from "#lib/exchange/report-json.ts";
import { err, ok, type Result } from "#lib/result.ts";

const USAGE =
  "Say what to do: report FILE [--today 2026-11-25], schema, or example. FILE may be - for what is piped in";

/** What is larger is no line file: even with all its stored files one stays below. */
const MOST_BYTES = 400_000_000;
const TOO_LARGE = "is larger than 400 MB; a line file is not";

// A reader who has seen enough (head, say) is no failure.
process.stdout.on("error", ignoreClosedPipe);

const answer = answerTo(process.argv.slice(2));
if (answer.ok) process.stdout.write(`${JSON.stringify(answer.value, null, 2)}\n`);
else {
  process.stdout.write(`${JSON.stringify({ problems: answer.error }, null, 2)}\n`);
  process.exitCode = 2;
}

function answerTo(args: string[]): Result<object, FileProblem[]> {
  const asked = parsed(args);
  if (asked === null) return problem(USAGE);
  const [verb, file, ...more] = asked.positionals;
  if (verb === "schema" && file === undefined) return ok(lineFileSchema());
  if (verb === "example" && file === undefined) return ok(EXAMPLE);
  if (verb !== "report" || file === undefined || more.length > 0) return problem(USAGE);
  return reportFor(file, asked.today);
}

function parsed(args: string[]): { positionals: string[]; today: string | null } | null {
  try {
    const { positionals, values } = parseArgs({
      args,
      allowPositionals: true,
      options: { today: { type: "string" } },
    });
    return { positionals, today: values.today ?? null };
  } catch {
    return null;
  }
}

function reportFor(name: string, today: string | null): Result<object, FileProblem[]> {
  if (today !== null && !isDay(today))
    return problem(`--today ${today} is no day; write it as 2026-11-25`);
  const text = textOf(name);
  if (!text.ok) return text;
  const read = readLineFile(text.value);
  if (!read.ok) return read;
  const file = withSightings(read.value.file, idsBeside(read.value.file));
  return ok(reportJson(file, reportOn(file, today ?? latestDay(file))));
}

function textOf(name: string): Result<string, FileProblem[]> {
  try {
    if (name !== "-" && fs.statSync(name).size > MOST_BYTES) return problem(`${name} ${TOO_LARGE}`);
    const bytes = fs.readFileSync(name === "-" ? 0 : name);
    if (bytes.byteLength > MOST_BYTES) return problem(`What was piped in ${TOO_LARGE}`);
    return ok(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    return problem(`${name} could not be read: ${words}`);
  }
}

function problem(reason: string): Result<never, FileProblem[]> {
  return err([{ path: "", reason }]);
}

function ignoreClosedPipe(error: NodeJS.ErrnoException): void {
  if (error.code !== "EPIPE") throw error;
}
