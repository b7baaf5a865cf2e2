interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Joins stretches that touch and that `alike` calls the same; the order stays. */
export function mergeStretches<T extends Stretch>(
  stretches: readonly T[],
  alike: (one: T, next: T) => boolean,
): T[] {
  const merged: T[] = [];
  for (const stretch of stretches) {
    const last = merged.at(-1);
    if (last && last.to === stretch.from && alike(last, stretch)) {
      merged[merged.length - 1] = { ...last, to: stretch.to };
    } else merged.push(stretch);
  }
  return merged;
}
