ALTER TABLE `fees` ADD `step` integer;--> statement-breakpoint
ALTER TABLE `fees` ADD `part_counts` text DEFAULT 'whole' NOT NULL;--> statement-breakpoint
ALTER TABLE `fees` ADD `least_cents` integer;--> statement-breakpoint
ALTER TABLE `fees` ADD `most_cents` integer;--> statement-breakpoint
ALTER TABLE `fees` ADD `surface` text;