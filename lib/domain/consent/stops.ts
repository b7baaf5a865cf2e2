/** Why something can't be done by a private link; each has its words in both languages. */
export const LINK_STOPS = [
  /** No such link, or one that ran out or was called back: nobody is told which. */
  "gone",
  "too-many",
  /** What was typed from a letter is no code, or has a slip. */
  "bad-code",
  "closed",
  "no-kind",
  "no-words",
  "bad-day",
  "too-long",
  "bad-file",
  "too-large",
  "too-many-files",
  "nothing-to-sign",
  /** An agreement that is to be recorded is signed on paper, before a notary. */
  "on-paper",
  "not-your-signature",
  /** Another version of the split is in force, or the facts behind its amount changed. */
  "superseded",
  /** A hold keeps the split from being final. */
  "held",
  "nothing-asked",
  /** The letter went without the area or the days that leave to dig would be for. */
  "area-open",
  "signed-already",
  "letter-not-ready",
  /** What was kept of the letter is no letter any more. */
  "letter-unreadable",
  "letter-not-opened",
  "no-intent",
  "no-records",
  "no-name",
  "no-capacity",
  "bad-drawing",
  /** A browser that is signed in to the office signs and answers nothing for a neighbor. */
  "office-session",
  /** A promise that binds is not taken back without a reason. */
  "no-release-words",
  "release-asked",
  "nothing-to-withdraw",
] as const;
export type LinkStop = (typeof LINK_STOPS)[number];
