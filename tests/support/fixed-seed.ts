import fc from "fast-check";

/**
 * Properties draw the same cases on every machine and every day, so that a change is judged by
 * itself; `npm run explore` gives a seed and a number of runs to look for new ones.
 */
const SEED = 20_261_125;

const explored = process.env["WYEBOOK_SEED"];
const runs = process.env["WYEBOOK_RUNS"];

fc.configureGlobal({
  seed: explored === undefined ? SEED : Number(explored),
  ...(runs === undefined ? {} : { numRuns: Number(runs) }),
});
