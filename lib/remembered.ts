/**
 * A pure function that keeps its last answer for as long as its first argument lives, and gives it
 * again where every other argument is the same thing. What it is given must not change meanwhile, as
 * no row of a line's file does.
 */
export function remembered<First extends object, Rest extends readonly unknown[], T>(
  work: (first: First, ...rest: Rest) => T,
): (first: First, ...rest: Rest) => T {
  const kept = new WeakMap<First, { readonly rest: Rest; readonly answer: T }>();
  return (first, ...rest) => {
    const known = kept.get(first);
    if (known !== undefined && isSame(known.rest, rest)) return known.answer;
    const answer = work(first, ...rest);
    kept.set(first, { rest, answer });
    return answer;
  };
}

function isSame(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((each, at) => Object.is(each, other[at]));
}
