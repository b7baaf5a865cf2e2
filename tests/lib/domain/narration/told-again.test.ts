import { expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

const RUN = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;

/** Kind or fault with its feet, and where it ends. */
function toldIn(talk: string): (string | number)[][] {
  return draftLog(talk, RUN).drafts.map(({ kind, fault, counter, toCounter }) => [
    fault ?? kind,
    (counter ?? 0) / 100,
    ...(toCounter === null ? [] : [toCounter / 100]),
  ]);
}

test("what is told going in and told again coming back is one row, with what was missed in between", () => {
  expect(
    toldIn(
      "0:02 Zero at the flange.\n0:30 Eleven, joint dropped.\n1:00 Twenty-eight, roots.\n1:30 Thirty-six, a hole on top.\n2:00 Forty-two, wye right.\n2:20 Fifty, we're in the main. Okay, turning around, coming back.\n2:40 There's that wye again, forty-two.\n2:55 Here's the hole, thirty-six.\n3:10 Thirty-three, I missed this one, crack on the right.\n3:30 The roots at twenty-eight.\n3:50 And the dropped joint at eleven.",
    ),
  ).toEqual([
    ["offset-joint", 11],
    ["roots", 28],
    ["hole", 36],
    ["tie-in", 42],
    ["crack", 33],
  ]);
});

test("what still goes on is no second row", () => {
  expect(
    toldIn(
      "0:01 Zero at the cleanout.\n0:30 Twenty-seven, roots.\n0:50 Still roots, twenty-nine.\n1:20 Fifty feet, main.",
    ),
  ).toEqual([["roots", 27, 29]]);
});

test("the ground that shows through is told of the fault through which it shows", () => {
  const open =
    "0:01 Zero at the cleanout.\n0:30 Twenty-four, pulled apart. Good inch and a half, see dirt.";
  expect(toldIn(open)).toEqual([["open-joint", 24]]);
  const missing =
    "0:01 Zero at the cleanout.\n0:30 There's a chunk missing. Thirty-four. On the right side, like three o'clock. You can see dirt.";
  expect(toldIn(missing)).toEqual([["hole", 34]]);
  const two =
    "0:01 Zero at the cleanout.\n0:30 Twenty-four, the pipe is broken and a hole beside it.";
  expect(toldIn(two)).toEqual([
    ["broken", 24],
    ["hole", 24],
  ]);
});

test("the hour told first, without its word, is no footage", () => {
  const { drafts, readings } = draftLog(
    "0:02 Zero at the box.\n0:20 At nine, a lateral. Eight feet.\n0:41 From ten to two, cracked, thirteen feet.\n1:02 At six, debris. Eighteen feet.",
    RUN,
  );
  expect(drafts.map(({ kind, counter, clock }) => [kind, counter, clock])).toEqual([
    ["tie-in", 800, 9],
    ["fault", 1300, 12],
    ["deposit", 1800, 6],
  ]);
  expect(readings.map(({ counter }) => counter)).toEqual([0, 800, 1300, 1800]);
  const read = draftLog("0:02 Zero.\n0:20 At nine, a wye. Twelve feet, roots.", RUN);
  expect(read.drafts.map(({ counter }) => counter)).toEqual([900, 1200]);
});

test("a captioning machine’s words are put right where those beside them leave no doubt", () => {
  expect(
    toldIn(
      "0:01 okay zero at the cleanout\n0:20 there's the why on the right at twenty four feed\n0:50 tree routes at thirty one\n1:10 i don't know why they did that at forty",
    ),
  ).toEqual([
    ["tie-in", 24],
    ["roots", 31],
  ]);
});

test("a number behind a pause is the first one, not another", () => {
  expect(
    toldIn(
      "0:01 Zero at the cleanout.\n0:30 We're in a puddle now, thirty-eight. And it's over at, hold on, forty-two.",
    ),
  ).toEqual([["water", 38, 42]]);
});

test("Spanish of another crew", () => {
  expect(
    toldIn(
      "0:02 Contador en cero.\n0:20 Doce pies, es una ye, a la izquierda.\n0:40 Treinta y uno, junta desfasada.\n1:00 De los cuarenta y dos a los cuarenta y seis hay agua parada.\n1:20 Cincuenta, le falta el piso, pura tierra.",
    ),
  ).toEqual([
    ["tie-in", 12],
    ["offset-joint", 31],
    ["water", 42, 46],
    ["hole", 50],
  ]);
});

/** What is said of one thing in several sentences, and what a log keeps of it: kind or fault, with its feet. */
const ONE_THING: readonly (readonly [talk: string, log: string])[] = [
  [
    "0:30 Twenty-two, roots in the joint.\n0:36 Those roots are coming from the top, see em.\n1:00 Forty, tap on the left.\n1:06 That tap's the neighbor's.",
    "roots@22 tie-in@40",
  ],
  [
    "0:30 There's a crack at twenty-two.\n0:34 It's a pretty bad crack.\n1:00 And a wye at forty on the right. The wye looks old.",
    "crack@22 tie-in@40",
  ],
  [
    "0:30 Starting into a belly, thirty.\n0:40 Still in the belly.\n0:50 And the belly ends at thirty-six.",
    "belly@30-36",
  ],
  [
    "0:30 Twenty-two, roots, and you can see where the roots cracked the pipe.",
    "roots@22 crack@22",
  ],
  ["0:30 Twenty-two, roots.\n1:00 Forty, more roots.", "roots@22 roots@40"],
  [
    "0:30 Twenty-two, tap left.\n1:00 Another tap at forty, same side.\n1:10 So that's two taps so far.",
    "tie-in@22 tie-in@40",
  ],
  [
    "0:30 Twenty-two, broken pipe. See the broken piece there. That break needs to be dug up.",
    "broken@22",
  ],
  [
    "0:30 Okay at forty-four the pipe's collapsed and I can't get past the collapse.",
    "collapsed@44",
  ],
  [
    "0:30 Twenty-two, tap on the right, that's the tap I was telling you about on the phone.",
    "tie-in@22",
  ],
  ["0:30 Twenty-two, tap on the right with roots in it.", "tie-in@22 roots@22"],
  [
    "0:30 Twenty-two, roots.\n2:00 So basically you've got roots at twenty-two and that's what's backing you up.",
    "roots@22",
  ],
  [
    "0:30 Twenty-two, roots.\n0:50 Thirty-one, crack.\n2:00 So to recap, roots at twenty-two, a crack at thirty-one. Everything else looks good.",
    "roots@22 crack@31",
  ],
  [
    "0:30 Twenty-two, roots.\n0:50 Thirty-one, crack.\n2:00 I'd cut the roots and line the cracked section.",
    "roots@22 crack@31",
  ],
  [
    "0:30 Twenty-two, lateral on the left.\n0:50 Thirty, some grease on the top. That grease is coming from that lateral back there.",
    "tie-in@22 deposit@30",
  ],
  ["0:30 Thirty, water. Water, water, water. Out at thirty-four.", "water@30-34"],
  ["0:30 Twenty-two, there's a hole in the top. You can see daylight through the hole.", "hole@22"],
  [
    "0:30 Twenty-two, joint's separated. Big gap. You can see the gap all the way around.",
    "open-joint@22",
  ],
  [
    "0:30 Twenty-two, offset. The camera drops down that offset. About an inch of offset.",
    "offset-joint@22",
  ],
  ["0:30 Twenty-two, pipe's egged. It's out of round maybe ten percent.", "deformed@22"],
  ["0:30 Grease from twenty-two to twenty-eight. Heavy grease.", "deposit@22-28"],
  [
    "0:30 Roots starting at fifteen. Roots. More roots. Roots all the way to twenty.",
    "roots@15-20",
  ],
  [
    "0:30 Twenty-two, you've got groundwater leaking in. See it drip, drip, drip.",
    "infiltration@22",
  ],
  [
    "0:30 Twenty-two here's the tee. It's a four inch tee. Looks like that tee's been there forever.",
    "tie-in@22",
  ],
  ["0:30 Twenty-two, bottom's all rotted. No bottom left.", "worn-surface@22"],
  ["0:30 Twenty-two, there's a cleanout. That cleanout must be buried.", "cleanout@22"],
  ["0:30 Twenty-two, taps on both sides.", "tie-in@22 tie-in@22"],
  [
    "0:30 Roots here, twenty-two. Moving along, looks good, looks good, no issues. Okay.\n1:00 Alright here's your tie-in, forty.",
    "roots@22 tie-in@40",
  ],
];

test.each(ONE_THING)("%s", (talk, log) => {
  const told = toldIn(`0:02 Zero at the cleanout.\n${talk}\n3:00 Sixty-three, we're at the main.`);
  expect(told.map(([what, ...feet]) => `${what}@${feet.join("-")}`).sort()).toEqual(
    log.split(" ").sort(),
  );
});
