import type { CalculationAnswer } from "./calculation.ts";

export type CalculationRead = { readonly answer: CalculationAnswer } | { readonly failed: string };

const NO_ANSWER = "The server did not respond. Hide this and open the amount again.";

/** Asks the office’s server how an amount is calculated; a failure comes back as words for a person. */
export async function readCalculation(address: string): Promise<CalculationRead> {
  try {
    const response = await fetch(address, { cache: "no-store" });
    const body: unknown = await response.json();
    if (!response.ok) return { failed: messageIn(body) };
    // Our own route answers it, and nothing else.
    return { answer: body as CalculationAnswer };
  } catch {
    return { failed: NO_ANSWER };
  }
}

function messageIn(body: unknown): string {
  const isTold = typeof body === "object" && body !== null && "message" in body;
  return isTold && typeof body.message === "string" ? body.message : NO_ANSWER;
}
