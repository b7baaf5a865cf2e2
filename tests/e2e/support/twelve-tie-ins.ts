// One invented line of 212 ft with twelve tie-ins, as an office gets it: a card in a clerk's hand, what
// the technician said while the camera went down to the main, and the truth to check against.

/** The card: whole and half feet, measured from the inside of the main's manhole, 3 ft short. */
export const CARD: readonly (readonly string[])[] = [
  ["Entry", "Distance", "Side", "Size", "Material", "For"],
  ["House 2", "11", "left", "4", "vitrified clay", "2 Tansy Court"],
  ["House 1", "27", "right", "4", "vitrified clay", "1 Tansy Court"],
  ["House 4", "44.5", "left", "4", "vitrified clay", "4 Tansy Court"],
  ["House 3", "55", "right", "4", "vitrified clay", "3 Tansy Court"],
  ["House 6", "73.5", "left", "4", "vitrified clay", "6 Tansy Court"],
  ["House 5", "90", "right", "4", "vitrified clay", "5 Tansy Court"],
  ["House 8", "107.5", "left", "4", "vitrified clay", "8 Tansy Court"],
  ["House 7", "125", "right", "4", "vitrified clay", "7 Tansy Court"],
  ["House 10", "155.5", "left", "4", "vitrified clay", "10 Tansy Court"],
  ["House 9", "172", "right", "4", "vitrified clay", "9 Tansy Court"],
];

/** The properties on the card. */
export const HOUSES = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "10"].map(
  (number) => `${number} Tansy Court`,
);

/** Spoken on the way down from the upper cleanout, 212 ft above the main. */
export const NARRATION = `0:04 Okay, Lou Castellane, we're going in at the upper cleanout behind number ten, counter's on zero, heading down to the main.
0:31 Five feet. Clay pipe, six inch, looks clean.
0:58 Coming up on fifteen... fifteen point three, there's a tap on the left, four inch plastic, somebody broke it in. That one's not on the card.
1:44 Thirty-six eight. Tie-in, left side, four inch clay wye.
2:10 Fifty feet even.
2:30 There's another one, right-hand side, clay, four inch.
2:38 Moving on. Fifty-five now.
3:05 Seventy, no, seventy point one. Tap at three o'clock, three inch cast iron, saddle. Don't see that one on the card either.
3:40 Eighty-four. Branch at nine o'clock, four inch clay.
4:02 Roots from ninety to ninety-three and a half, maybe a third of the pipe.
4:20 A hundred and one four, tie-in on the right, four-inch clay.
4:48 One eighteen point nine, connection, left, four inch clay wye.
5:15 One thirty five seven, tie-in, right side, clay, four inch.
5:40 Offset joint at one forty-one and a half, top of the pipe.
5:58 One fifty-four, wye on the left, four inch clay.
6:18 One sixty four and a half, another wye, right, four inch clay.
6:50 Water in the bottom from one seventy to one seventy-four, bit of a belly.
7:10 One eighty-two point two, tie-in, nine o'clock, four inch clay.
7:41 One ninety seven eight, last one, tie-in on the right, four inch clay.
8:12 Two hundred and twelve, and that's the main.
`;

/** Where the twelve really are, from the main, and whether the card has them. */
export const TRUTH = [
  { station: "14.2", card: "House 2" },
  { station: "29.8", card: "House 1" },
  { station: "47.5", card: "House 4" },
  { station: "58.0", card: "House 3" },
  { station: "76.3", card: "House 6" },
  { station: "93.1", card: "House 5" },
  { station: "110.6", card: "House 8" },
  { station: "128.0", card: "House 7" },
  { station: "141.9", card: null },
  { station: "158.4", card: "House 10" },
  { station: "175.2", card: "House 9" },
  { station: "196.7", card: null },
] as const;
