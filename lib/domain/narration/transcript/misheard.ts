/** Words that a captioning machine writes for those of the trade, by what stands beside them. */
interface Misheard {
  readonly heard: RegExp;
  readonly means: string;
  /** What must stand before it, one to three words. */
  readonly behind?: RegExp;
  /** What must follow it, one to three words. */
  readonly before?: RegExp;
}

const ARTICLE =
  /\b(a|an|the|another|this|that|your|first|second|third|double|inch|factory|capped|somebody|neighbor|guy)$/;
const SIDE =
  /^(on the|on your|coming|comes|at|here|to the|connection|branch|fitting|right|left|off)\b/;
const NUMBER =
  /(\d|\b(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|half))$/;

const MISHEARD: readonly Misheard[] = [
  { heard: /^why$/, means: "wye", behind: ARTICLE },
  {
    heard: /^why$/,
    means: "wye",
    before: /^(on the|connection|branch|fitting|coming in|comes in)\b/,
  },
  { heard: /^(tab|tabs)$/, means: "tap", behind: ARTICLE },
  { heard: /^(tab|tabs)$/, means: "tap", before: SIDE },
  { heard: /^(routes|rutes)$/, means: "roots" },
  {
    heard: /^(route|rude|rout)$/,
    means: "root",
    before: /^(intrusion|ball|mass|growth|coming|in the)\b/,
  },
  { heard: /^(route|rude|rout)$/, means: "root", behind: /\b(tree|hair|fine|tap|some)$/ },
  { heard: /^(feed|feat|fee|fete)$/, means: "feet", behind: NUMBER },
  { heard: /^(mane|maine)$/, means: "main", behind: /\b(the|city|city's|street)$/ },
  { heard: /^(bellie|bellied up|beli)$/, means: "belly" },
  {
    heard: /^(ladder|ladders|lateral's|latter)$/,
    means: "lateral",
    before: /^(on the|coming in|comes in)\b/,
  },
  { heard: /^(play|klay|clays)$/, means: "clay", before: /^(pipe|tile)\b/ },
  {
    heard: /^(play|klay)$/,
    means: "clay",
    behind: /\b(to|to the|into|into the|inch|vitrified)$/,
  },
];

/** `thir teen`, `six ty`, `hun dred`: a number broken within its word where a caption ended. */
const BROKEN =
  /^(thir|four|fif|six|seven|eigh|nine) teen$|^(twen|thir|for|fif|six|seven|eigh|nine) ty$|^(hun dred|thou sand|e leven|elev en|quar ter)$/;

/** The words with a number that was broken in two made one. */
export function joinedNumbers<W extends { readonly text: string; readonly to: number }>(
  words: readonly W[],
): W[] {
  const whole: W[] = [];
  for (const word of words) {
    const last = whole.at(-1);
    if (last && BROKEN.test(`${last.text} ${word.text}`))
      whole[whole.length - 1] = { ...last, text: last.text + word.text, to: word.to };
    else whole.push(word);
  }
  return whole;
}

/** The words with what a machine misheard put right, where the words beside it leave no doubt. */
export function heardRight<W extends { readonly text: string }>(words: readonly W[]): W[] {
  return words.map((word, at) => {
    const found = MISHEARD.filter(({ heard }) => heard.test(word.text)).find(
      ({ behind, before }) =>
        (!behind || behind.test(textOf(words, at - 3, at))) &&
        (!before || before.test(textOf(words, at + 1, at + 4))),
    );
    return found ? { ...word, text: found.means } : word;
  });
}

function textOf(words: readonly { readonly text: string }[], from: number, to: number): string {
  return words
    .slice(Math.max(0, from), to)
    .map(({ text }) => text)
    .join(" ");
}
