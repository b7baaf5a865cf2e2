ALTER TABLE `dig_areas` ADD `plantings` text DEFAULT 'not-set' NOT NULL;--> statement-breakpoint
ALTER TABLE `dig_areas` ADD `plants` text DEFAULT '' NOT NULL;