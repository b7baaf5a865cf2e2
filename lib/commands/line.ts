// npm run -s line -- report FILE | schema | example: the line file without a database; and
// log TALK: the log that is drafted from what a technician said.
import fs from "node:fs";
import { parseArgs } from "node:util";
import { DIRECTIONS } from "#lib/domain/facts/run.ts";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";
import { wrongText } from "#lib/domain/narration/transcript/wrong-text.ts";
import { withPartiesAsOne } from "#lib/domain/party/as-one.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { idsBeside, withSightings } from "#lib/domain/report/with-sightings.ts";
import { EXAMPLE } from "#lib/exchange/example.ts";
import { isDay } from "#lib/exchange/field.ts";
import { latestDay } from "#lib/exchange/latest-day.ts";
import { type FileProblem, lineFileSchema, readLineFile } from "#lib/exchange/line-file.ts";
import { logJson } from "#lib/exchange/log-json.ts";
import { reportJson } from "#lib/exchange/report-json.ts";
import { decodeText } from "#lib/exchange/table-file/decode-text.ts";
import { err, ok, type Result } from "#lib/result.ts";

const USAGE =
  "Usage: report FILE [--today YYYY-MM-DD] | log TALK [--looks upstream|downstream] | schema | example. FILE and TALK may be - for standard input";

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
  if (file === undefined || more.length > 0) return problem(USAGE);
  if (verb === "log" && asked.today === null) return logFor(file, asked.looks);
  if (verb !== "report" || asked.looks !== null) return problem(USAGE);
  return reportFor(file, asked.today);
}

interface Asked {
  readonly positionals: string[];
  readonly today: string | null;
  readonly looks: string | null;
}

function parsed(args: string[]): Asked | null {
  try {
    const { positionals, values } = parseArgs({
      args,
      allowPositionals: true,
      options: { today: { type: "string" }, looks: { type: "string" } },
    });
    return { positionals, today: values.today ?? null, looks: values.looks ?? null };
  } catch {
    return null;
  }
}

function reportFor(name: string, today: string | null): Result<object, FileProblem[]> {
  if (today !== null && !isDay(today))
    return problem(`--today ${today} is not a date; enter it as 2026-11-25`);
  const text = textOf(name);
  if (!text.ok) return text;
  const read = readLineFile(text.value);
  if (!read.ok) return read;
  const one = withPartiesAsOne(read.value.file);
  const file = withSightings(one, idsBeside(one));
  return ok(reportJson(file, reportOn(file, today ?? latestDay(file))));
}

/** A lens mostly looks downstream: in at the house, down to the main, and pulled back while it is told. */
function logFor(name: string, asked: string | null): Result<object, FileProblem[]> {
  const looks = DIRECTIONS.find((each) => each === (asked ?? "downstream"));
  if (looks === undefined)
    return problem(`--looks ${asked} is not a direction; enter upstream or downstream`);
  const bytes = bytesOf(name);
  if (!bytes.ok) return bytes;
  const text = decodeText(bytes.value)?.text;
  if (text === undefined)
    return problem(`${name} is not a text file. Use a transcript as .vtt, .srt or .txt`);
  const wrong = wrongText(text);
  if (wrong !== null)
    return problem(`${name}: ${wrong.missing ? "the transcript is empty" : wrong.words}`);
  return ok(logJson(draftLog(text, { looks, measuredFrom: null, mainCounter: null }), looks));
}

function textOf(name: string): Result<string, FileProblem[]> {
  const bytes = bytesOf(name);
  if (!bytes.ok) return bytes;
  try {
    return ok(new TextDecoder("utf-8", { fatal: true }).decode(bytes.value));
  } catch (error) {
    return unreadable(name, error);
  }
}

function bytesOf(name: string): Result<Uint8Array, FileProblem[]> {
  try {
    if (name !== "-" && fs.statSync(name).size > MOST_BYTES) return problem(`${name} ${TOO_LARGE}`);
    const bytes = fs.readFileSync(name === "-" ? 0 : name);
    if (bytes.byteLength > MOST_BYTES) return problem(`Standard input ${TOO_LARGE}`);
    return ok(new Uint8Array(bytes));
  } catch (error) {
    return unreadable(name, error);
  }
}

function unreadable(name: string, error: unknown): Result<never, FileProblem[]> {
  return problem(
    `${name} could not be read: ${error instanceof Error ? error.message : String(error)}`,
  );
}

function problem(reason: string): Result<never, FileProblem[]> {
  return err([{ path: "", reason }]);
}

function ignoreClosedPipe(error: NodeJS.ErrnoException): void {
  if (error.code !== "EPIPE") throw error;
}
