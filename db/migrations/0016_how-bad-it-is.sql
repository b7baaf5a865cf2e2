ALTER TABLE `observations` ADD `degree` text;--> statement-breakpoint
ALTER TABLE `observations` ADD `reduction` real;