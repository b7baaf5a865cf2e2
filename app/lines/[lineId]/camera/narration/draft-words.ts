type Texts = Readonly<Record<string, string>>;

/** `tie-in at 24.1 ft, 9 o’clock, 4 in, vitrified clay`. */
export function seenWords(texts: Texts): string {
  const text = (key: string) => texts[key] ?? "";
  const to = text("toCounter") === "" ? "" : ` to ${text("toCounter")}`;
  const place = text("counter") === "" ? "without a counter" : `at ${text("counter")}${to} ft`;
  const parts = [
    `${text("fault") || text("kind")} ${place}`,
    text("clock") === "" ? "" : `${text("clock")} o’clock`,
    text("diameter") === "" ? "" : `${text("diameter")} in`,
    text("material") === "unknown" ? "" : text("material"),
  ];
  return parts.filter((part) => part !== "").join(", ");
}

/** `under water from 51.6 to 57.6 ft`. */
export function unseenWords(texts: Texts): string {
  return `${texts["cause"] ?? ""} from ${texts["fromCounter"] ?? ""} to ${texts["toCounter"] ?? ""} ft`;
}
