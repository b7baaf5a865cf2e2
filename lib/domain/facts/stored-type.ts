/**
 * What is stored: papers and photographs that a packet can hold and a browser can show. Anything
 * else could be served as something that runs.
 */
export const STORED_TYPES = ["application/pdf", "image/png", "image/jpeg"] as const;
export type StoredType = (typeof STORED_TYPES)[number];
