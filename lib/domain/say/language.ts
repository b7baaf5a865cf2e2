export const LANGUAGES = ["en", "es"] as const;
export type Language = (typeof LANGUAGES)[number];
