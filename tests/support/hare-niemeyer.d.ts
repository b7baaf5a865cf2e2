declare module "hare-niemeyer" {
  /** Seats by the largest remainder; where remainders tie, by lot. */
  const hareNiemeyer: (
    votes: Readonly<Record<string, number>>,
    seats: number,
  ) => Record<string, number>;
  export = hareNiemeyer;
}
