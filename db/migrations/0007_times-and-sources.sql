ALTER TABLE `dated_events` ADD `at` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `holidays` ADD `source` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `inspections` ADD `booked_at` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `locate_tickets` ADD `called_at` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `locate_tickets` ADD `work_begins_at` text DEFAULT '' NOT NULL;