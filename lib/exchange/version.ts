// A file of an earlier version is turned into one of this version before it is looked at, so that the
// shape knows one version only.

/** The format's version; it rises when a field changes its name or its meaning. */
export const FORMAT_VERSION = 2;

type Json = Readonly<Record<string, unknown>>;

/**
 * A line file's JSON as this version writes it. Version 1 had one `direction` for a run: which way it
 * looked, with its footage measured from where the camera went in. What is no file of version 1 is
 * left as it is.
 */
export function upgraded(value: unknown): unknown {
  if (!isObject(value) || value["version"] !== 1) return value;
  const { runs } = value;
  const said = Array.isArray(runs) ? { runs: runs.map(runOf) } : {};
  return { ...value, version: FORMAT_VERSION, ...said };
}

/** Where a problem lies in the file as it was written: `runs.0.looks` was `runs.0.direction`. */
export function pathAsWritten(path: string, value: unknown): string {
  const [, at] = /^runs\.(\d+)\.looks$/.exec(path) ?? [];
  if (at === undefined || !isObject(value) || value["version"] !== 1) return path;
  const run: unknown = Array.isArray(value["runs"]) ? value["runs"][Number(at)] : null;
  return isObject(run) && "looks" in run ? path : `runs.${at}.direction`;
}

function runOf(run: unknown): unknown {
  if (!isObject(run) || !("direction" in run) || "looks" in run) return run;
  const { direction, ...rest } = run;
  return { ...rest, looks: direction };
}

function isObject(value: unknown): value is Json {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
