CREATE TABLE `due_counts` (
	`keeper` text NOT NULL,
	`waits_on` text NOT NULL,
	`kind` text NOT NULL,
	`sort_day` text NOT NULL,
	`count` integer DEFAULT 0 NOT NULL,
	PRIMARY KEY(`keeper`, `waits_on`, `kind`, `sort_day`)
);
--> statement-breakpoint
CREATE TABLE `line_keepers` (
	`line_id` text PRIMARY KEY NOT NULL,
	`user_id` text NOT NULL,
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`user_id`) REFERENCES `users`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
ALTER TABLE `due_things` ADD `waits_on` text DEFAULT 'office' NOT NULL;--> statement-breakpoint
ALTER TABLE `due_things` ADD `keeper` text DEFAULT '' NOT NULL;--> statement-breakpoint
CREATE INDEX `due_things_waits` ON `due_things` (`waits_on`,`kind`,`sort_day`,`sentence`);--> statement-breakpoint
CREATE INDEX `due_things_keeper` ON `due_things` (`keeper`,`kind`,`sort_day`,`sentence`);--> statement-breakpoint
ALTER TABLE `line_summaries` ADD `keeper` text DEFAULT '' NOT NULL;--> statement-breakpoint
CREATE INDEX `line_summaries_keeper` ON `line_summaries` (`keeper`,`waiting`,"pressing" DESC,`sort_name`);--> statement-breakpoint
-- What is due is summed up anew, now with who has to move; the counts follow as it is.
DELETE FROM `due_things`;
--> statement-breakpoint
UPDATE `tallies` SET `count` = 0 WHERE `name` IN ('late', 'due', 'blocked', 'waiting');
--> statement-breakpoint
UPDATE `line_summaries` SET `stale` = 1;
