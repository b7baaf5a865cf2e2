ALTER TABLE `permit_fees` ADD `by` text DEFAULT '' NOT NULL;--> statement-breakpoint
PRAGMA foreign_keys=OFF;--> statement-breakpoint
CREATE TABLE `__new_permit_steps` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`permit_id` text NOT NULL,
	`state` text NOT NULL,
	`on` text NOT NULL,
	`by` text NOT NULL,
	`note` text NOT NULL,
	`upload_id` text,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`permit_id`) REFERENCES `permits`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
INSERT INTO `__new_permit_steps`("line_id", "id", "position", "permit_id", "state", "on", "by", "note", "upload_id") SELECT "line_id", "id", "position", "permit_id", "state", "on", "by", "note", NULL FROM `permit_steps`;--> statement-breakpoint
DROP TABLE `permit_steps`;--> statement-breakpoint
ALTER TABLE `__new_permit_steps` RENAME TO `permit_steps`;--> statement-breakpoint
PRAGMA foreign_keys=ON;