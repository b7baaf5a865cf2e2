/**
 * Does work for the process that started this one: says that it is ready, then one answer to each
 * input, null where the work threw. Ends with that process.
 */
export function workApart<I, O>(work: (input: I) => Promise<O>): void {
  process.on("message", async (input) => {
    process.send?.(await answerTo(input as I));
  });
  process.once("disconnect", () => process.exit(0));
  process.send?.("ready");

  async function answerTo(input: I): Promise<{ value: O } | null> {
    try {
      return { value: await work(input) };
    } catch {
      return null;
    }
  }
}
