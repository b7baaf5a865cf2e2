ALTER TABLE `runs` RENAME COLUMN "direction" TO "looks";--> statement-breakpoint
ALTER TABLE `runs` ADD `measured_from` text DEFAULT 'access' NOT NULL;--> statement-breakpoint
ALTER TABLE `runs` ADD `self_leveling` text DEFAULT 'unknown' NOT NULL;--> statement-breakpoint
ALTER TABLE `observations` ADD `uncertainty_cft` integer;