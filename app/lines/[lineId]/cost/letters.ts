/** `a` for the first rule, `b` for the second: how the drawing names them. */
export function ruleLetter(at: number): string {
  return String.fromCharCode(97 + at);
}
