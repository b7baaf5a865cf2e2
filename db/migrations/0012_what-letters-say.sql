CREATE TABLE `dig_areas` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`property_id` text NOT NULL,
	`place` text NOT NULL,
	`length_cft` integer,
	`width_cft` integer,
	`first_on` text,
	`last_on` text,
	`restoration` text NOT NULL,
	`not_restored` text NOT NULL,
	`contact` text NOT NULL,
	`contact_phone` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `spill_steps` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`kind` text NOT NULL,
	`on` text NOT NULL,
	`at` text NOT NULL,
	`place` text NOT NULL,
	`number` text NOT NULL,
	`gallons` integer,
	`reached` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
ALTER TABLE `dated_events` ADD `until` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `dated_events` ADD `last_on` text;--> statement-breakpoint
ALTER TABLE `dated_events` ADD `reference` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `lines` ADD `warranty_months` integer;--> statement-breakpoint
ALTER TABLE `lines` ADD `warranty_covers` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `office` ADD `hours_json` text;--> statement-breakpoint
ALTER TABLE `office` ADD `on_call_phone` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `office` ADD `on_call_hours_json` text;--> statement-breakpoint
ALTER TABLE `office` ADD `payee` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `office` ADD `pay_methods_json` text DEFAULT '[]' NOT NULL;--> statement-breakpoint
ALTER TABLE `office` ADD `pay_days` integer;--> statement-breakpoint
ALTER TABLE `office` ADD `deposit_percent` integer;--> statement-breakpoint
ALTER TABLE `test_days` ADD `plant_told_on` text;--> statement-breakpoint
ALTER TABLE `test_days` ADD `plant_told` text DEFAULT '' NOT NULL;