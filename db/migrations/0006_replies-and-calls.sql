CREATE TABLE `household_calls` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`party_id` text NOT NULL,
	`property_id` text NOT NULL,
	`purpose` text NOT NULL,
	`for_day` text NOT NULL,
	`outcome` text NOT NULL,
	`words` text NOT NULL,
	`called_by` text NOT NULL,
	`called_on` text NOT NULL,
	`needs` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`party_id`) REFERENCES `parties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
ALTER TABLE `replies` ADD `suits_on` text;--> statement-breakpoint
ALTER TABLE `replies` ADD `dealt_by` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `replies` ADD `dealt_on` text;--> statement-breakpoint
ALTER TABLE `replies` ADD `dealt_how` text;--> statement-breakpoint
ALTER TABLE `replies` ADD `dealt_words` text DEFAULT '' NOT NULL;