CREATE TABLE `reminder_rules` (
	`kind` text PRIMARY KEY NOT NULL,
	`days_after` integer NOT NULL,
	`every` integer NOT NULL,
	`most` integer NOT NULL,
	`sends` integer NOT NULL,
	`sends_by` text NOT NULL,
	`sends_at` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `reminders_drafted` (
	`line_id` text NOT NULL,
	`notice_id` text NOT NULL,
	`draft_id` text NOT NULL,
	`sends` integer NOT NULL,
	PRIMARY KEY(`line_id`, `notice_id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE cascade
);
