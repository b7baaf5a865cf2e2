import Link from "next/link";
import type { QuestionAnswer } from "#lib/domain/desk/answer.ts";

/** What would close a question, with the way to where it is done if that is another place. */
export function Closes({
  lineId,
  answer: { closes, where },
}: {
  readonly lineId: string;
  readonly answer: Pick<QuestionAnswer, "closes" | "where">;
}) {
  return where === undefined ? closes : <Link href={`/lines/${lineId}/${where}`}>{closes}</Link>;
}
