CREATE TABLE `same_parties` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`party_id` text NOT NULL,
	`into_id` text NOT NULL,
	`same` integer NOT NULL,
	`by` text NOT NULL,
	`on` text NOT NULL,
	`reason` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`party_id`) REFERENCES `parties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`into_id`) REFERENCES `parties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
ALTER TABLE `parties` ADD `care_of` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `roles` ADD `held_with` text DEFAULT '' NOT NULL;