import { connectionTable } from "#lib/domain/packet/connection-table.ts";
import { logTable } from "#lib/domain/packet/log-table.ts";

/** What can be taken out of a line’s file as a table. */
export const TABLES = { connections: connectionTable, log: logTable } as const;
export type TakenTable = keyof typeof TABLES;
