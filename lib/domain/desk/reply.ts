import type { QuestionAnswer } from "./answer.ts";

/** An answer without its question. */
export type Reply = Pick<QuestionAnswer, "sentence" | "closes" | "where" | "pressing">;

/** How much an open answer presses, from what can wait to what cannot. */
export const PRESSING = {
  closed: 0,
  someTime: 10,
  ordinary: 30,
  stalls: 50,
  soon: 70,
  holds: 80,
  late: 100,
} as const;

/** Something that would close a question, with how much it presses. */
export interface Opening {
  readonly closes: string;
  /** Where it is done, as a path under the line; left out where it is the question's own page. */
  readonly where?: string;
  readonly pressing: number;
}

/** An answer with the most pressing of what is open; closed when nothing is. */
export function replyWith(sentence: string, open: readonly Opening[]): Reply {
  const [first] = open.toSorted((one, other) => other.pressing - one.pressing);
  return {
    sentence,
    closes: first?.closes ?? null,
    ...(first?.where === undefined ? {} : { where: first.where }),
    pressing: first?.pressing ?? PRESSING.closed,
  };
}
