-- The ten questions have other names: what was summed up under the old ones is summed up anew.
DELETE FROM `due_things`;
--> statement-breakpoint
UPDATE `line_summaries` SET `stale` = 1, `open_json` = '[]', `question` = NULL;
