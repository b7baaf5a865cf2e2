declare module "munkres-js" {
  /** Row and column of each chosen cell. */
  const computeMunkres: (costs: number[][]) => [number, number][];
  export = computeMunkres;
}
