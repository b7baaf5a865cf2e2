ALTER TABLE `clock_rules` ADD `white_line_first` integer DEFAULT false NOT NULL;--> statement-breakpoint
PRAGMA foreign_keys=OFF;--> statement-breakpoint
CREATE TABLE `__new_locate_tickets` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`number` text NOT NULL,
	`called_on` text NOT NULL,
	`called_at` text DEFAULT '' NOT NULL,
	`work_begins_on` text,
	`work_begins_at` text DEFAULT '' NOT NULL,
	`white_lined_on` text,
	`white_lined_by` text DEFAULT '' NOT NULL,
	`white_lined_how` text,
	`white_line_photo_id` text,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`white_line_photo_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
INSERT INTO `__new_locate_tickets`("line_id", "id", "position", "number", "called_on", "called_at", "work_begins_on", "work_begins_at", "note") SELECT "line_id", "id", "position", "number", "called_on", "called_at", "work_begins_on", "work_begins_at", "note" FROM `locate_tickets`;--> statement-breakpoint
DROP TABLE `locate_tickets`;--> statement-breakpoint
ALTER TABLE `__new_locate_tickets` RENAME TO `locate_tickets`;--> statement-breakpoint
PRAGMA foreign_keys=ON;--> statement-breakpoint
ALTER TABLE `permits` ADD `posted_on` text;--> statement-breakpoint
ALTER TABLE `permits` ADD `posted_by` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `permits` ADD `posted_place` text DEFAULT '' NOT NULL;