CREATE TABLE `calendar_feeds` (
	`id` text PRIMARY KEY NOT NULL,
	`user_id` text NOT NULL,
	`token_hash` text NOT NULL,
	`only_mine` integer NOT NULL,
	`created_at` text NOT NULL,
	`revoked_at` text,
	`revoked_by` text NOT NULL,
	`read_at` text,
	FOREIGN KEY (`user_id`) REFERENCES `users`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `calendar_feeds_token` ON `calendar_feeds` (`token_hash`);--> statement-breakpoint
CREATE INDEX `calendar_feeds_user` ON `calendar_feeds` (`user_id`);--> statement-breakpoint
CREATE TABLE `line_dates` (
	`line_id` text NOT NULL,
	`position` integer NOT NULL,
	`key` text NOT NULL,
	`day` text NOT NULL,
	`since` text NOT NULL,
	`title` text NOT NULL,
	`path` text NOT NULL,
	PRIMARY KEY(`line_id`, `position`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `line_dates_day` ON `line_dates` (`day`);--> statement-breakpoint
-- The days of each line are gathered when it is summed up anew.
UPDATE `line_summaries` SET `stale` = 1;
