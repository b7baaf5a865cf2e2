import type { Word } from "../transcript/word.ts";
import { anyFormOf } from "./forms.ts";
import type { Mark } from "./mark.ts";
import type { Thing } from "./things.ts";

const LONG = new Set(["water", "deposit"]);
const LONG_FAULTS = new Set([
  "roots",
  "belly",
  "crack",
  "infiltration",
  "worn-surface",
  "deformed",
]);

/** What may go on for some feet. */
export function isLong({ kind, fault }: Pick<Thing, "kind" | "fault">): boolean {
  return LONG.has(kind) || (fault !== null && LONG_FAULTS.has(fault));
}

/** How a pipe is that has nothing. */
const WELL =
  "(?:dry|clear|clean|bare|round|true|smooth|good|fine|solid|sound|okay|ok|normal|level|straight|healthy|decent)";
const IT =
  "(?:it|that|that's|it's|that one|she|she's|they|this|which|we|we're|i|i'm|water|grease|scale|sand|mud|roots|crack|belly|sag|dip)";
const AWAY = "(?: (?:back|right|on|all|kind of))?";

/** Where something stops that went on, whatever it was. */
const ENDING = new RegExp(
  `(?<= )(?:${[
    // `round again`, `good pipe again`
    `${WELL}(?: (?:pipe|clay|floor|wall|bottom|iron))? again`,
    // `back on dry pipe`, `back to normal`
    `(?:back|now) (?:on|to|in|into|onto)(?: (?:a|the|some|nice))? ${WELL}`,
    "(?:it|she) (?:is |was )?(?:out|over|up) of (?:it|that|there|the water)",
    "(?:up|back up|out|up and out|clear|free|shed|rid) of (?:it|that|them|there|this)",
    "(?:up|come up|comes up|came up) for air",
    `(?:${IT}) (?:(?:is|are|was|has|have|am|all|now|just|been|finally|about|pretty much) )*(?:gone|done|done with|over|over with|behind (?:us|me)|finished|through with)(?! (?:to|flat|bad|soft|rough|egg|by|that|it|with))`,
    `(?:we're|i'm|she's|we are) (?:back )?(?:out|up)(?! (?:here|to|on|at the|in|against|there|of))`,
    `(?:${anyFormOf("taper peter fade die thin play wash")})${AWAY} (?:off|out|away|down)`,
    `(?:${anyFormOf("level even smooth straighten round heal clear clean dry ease")})${AWAY} (?:off|out|up)`,
    `(?:gives|gave|runs|ran) out|(?:drops|falls|goes|went|dropped|fell) (?:right )?away|surfaced|surfacing|${anyFormOf("disappear")}`,
    "(?:it|that|they|she) (?:gets|got|is|looks) (?:a lot |much )?better|(?:it's|she's|that's|(?:it|she|that|pipe|bottom|wall) (?:is|gets|got|looks)) (?:a lot |much |a little |a bit )?(?:rounder|better|cleaner|smoother|straighter|drier|clearer|shallower)(?: now)?|improves|let(?:s|ting)? up|peters|(?:we|it|they|she) (?:clear|lose)s? (?:it|up)",
    "(?:the )?(?:(?:(?:tail|far|other|house|street|city|near|main|back|front|top|bottom|upstream|downstream|uphill|downhill) )?end|last|far side|all) of (?:it|that|this|them|those|the)",
    "(?:quits|stops|stopped|ended|ends) (?:being|having|doing)(?: \\w+)?",
  ].join("|")})(?= )`,
  "g",
);

/** `Forty-seven. Dry.`, `and out, twenty-five`: by itself beside a number. */
const ALONE = /^(?:dry|out|up|done|clear|over|gone|clean|smooth|level|end)$/;
const LEAD = /^(?:and|so|now|okay|then|we're|i'm|it's|she's|that's|high|back|all|is|it)$/;
const FOLLOW = /^(?:at|by|around|now|here|about|like)$/;

/** The marks with a turn where the words say that something stops. */
export function withEndings(marks: readonly Mark[], words: readonly Word[]): Mark[] {
  const found = [...ends(words), ...alone(marks, words)].filter(
    ({ from, to }) =>
      words[from]?.asks !== true &&
      !NOT.test(text(words.slice(Math.max(0, from - 3), from), words[from]?.sentence)) &&
      marks.every(
        (mark) =>
          mark.to <= from ||
          mark.from >= to ||
          mark.what === "clock" ||
          (mark.what === "turn" && mark.turn !== "negation"),
      ),
  );
  const free = marks.filter((mark) =>
    found.every(({ from, to }) => mark.to <= from || mark.from >= to),
  );
  return [...free, ...found].sort((a, b) => a.from - b.from);
}

const NOT = /\b(?:not|no|never|don't|doesn't|isn't|ain't|didn't|won't|if|until|till|when|before)\b/;

function text(words: readonly Word[], sentence: number | undefined): string {
  return words.flatMap((word) => (word.sentence === sentence ? [word.text] : [])).join(" ");
}

function ends(words: readonly Word[]): Mark[] {
  const marks: Mark[] = [];
  for (let from = 0; from < words.length; ) {
    let to = from;
    while (to < words.length && words[to]?.sentence === words[from]?.sentence) to += 1;
    const said = words.slice(from, to).map((word) => word.text);
    const whole = ` ${said.join(" ")} `;
    for (const hit of whole.matchAll(ENDING)) {
      const first = from + whole.slice(0, hit.index).trim().split(" ").filter(Boolean).length;
      marks.push(closes(first, first + hit[0].split(" ").length));
    }
    from = to;
  }
  return marks;
}

function alone(marks: readonly Mark[], words: readonly Word[]): Mark[] {
  const numbers = marks.filter(({ what }) => what === "distance");
  return words.flatMap((word, at): Mark[] => {
    if (!ALONE.test(word.text)) return [];
    const [before, next] = [words[at - 1], words[at + 1]];
    const begins = before?.sentence !== word.sentence || numbers.some(({ to }) => to === at);
    const stops = next?.sentence !== word.sentence;
    const number = numbers.some(({ from }) => from === at + 1);
    const free = begins || LEAD.test(before?.text ?? "");
    const set = stops || number || next?.clause !== word.clause || FOLLOW.test(next.text);
    return free && set ? [closes(at, at + 1)] : [];
  });
}

function closes(from: number, to: number): Mark {
  return { what: "turn", turn: "closes", from, to };
}
