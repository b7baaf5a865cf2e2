import { unstable_rethrow } from "next/navigation";
import { digestOf, faultOf } from "./fault.ts";

const STAYS = "What you typed is still here";

const NO_ANSWER = `No answer came from the office’s computer, so this may not have been saved. ${STAYS}: wait a moment, look whether it was saved, and try again.`;

const NEIGHBOR: Readonly<Record<string, string>> = {
  en: "No answer came from the office’s computer, so this may not have been sent. What you typed is still here: try again in a minute, or call the office at the number on your letter.",
  es: "La computadora de la oficina no respondió, así que es posible que esto no se haya enviado. Lo que escribió sigue aquí: inténtelo de nuevo en un minuto o llame a la oficina al número que aparece en su carta.",
};

/**
 * Why what was pressed got no answer, in words that stand where the answer would, so that the page and
 * what was typed on it stay: the server ended meanwhile, the office's machine could not do it, or
 * something broke that nobody foresaw. A neighbor is only told whom to ask, in the page's language.
 * Throws on what leads to another page.
 */
export function unanswered(error: unknown, neighbor: { readonly language: string } | null = null) {
  unstable_rethrow(error);
  if (neighbor !== null) return NEIGHBOR[neighbor.language] ?? NEIGHBOR["en"] ?? "";
  const fault = faultOf(error);
  if (fault !== null) return `${fault.title}. ${fault.text}`;
  const mark = digestOf(error);
  if (mark === "") return NO_ANSWER;
  return `Something went wrong, and this was not finished. ${STAYS}: look whether it was saved, and try again. If it happens again, give this code to your administrator: ${mark}`;
}
