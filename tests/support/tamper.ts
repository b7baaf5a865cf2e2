import { isGuard } from "#db/guards.ts";
import type { OpenDb } from "#db/open.ts";

/** Changes a database as somebody would who first takes its guards away: what such a change breaks. */
export function tamper({ $client: client }: Pick<OpenDb, "$client">, sql: string): void {
  const triggers = client.prepare("select name, sql from sqlite_master where type = 'trigger'");
  const away = (triggers.all() as { name: string; sql: string }[]).filter(
    ({ name }) => isGuard(name) || name.includes("_no_"),
  );
  for (const { name } of away) client.exec(`drop trigger "${name}"`);
  client.exec(sql);
  for (const { sql: trigger } of away) client.exec(trigger);
}
