ALTER TABLE `consents` ADD `rests_on_id` text;--> statement-breakpoint
ALTER TABLE `consents` ADD `entered_by` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `signatures` ADD `for_name` text DEFAULT '' NOT NULL;