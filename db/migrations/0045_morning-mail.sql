CREATE TABLE `daily_mails` (
	`id` text PRIMARY KEY NOT NULL,
	`user_id` text NOT NULL,
	`day` text NOT NULL,
	`to_address` text NOT NULL,
	`to_name` text NOT NULL,
	`subject` text NOT NULL,
	`text` text NOT NULL,
	`message_id` text NOT NULL,
	`state` text NOT NULL,
	`attempts` integer NOT NULL,
	`locked_by` text,
	`lease_until` text,
	`next_try_at` text NOT NULL,
	`problem` text NOT NULL,
	`created_at` text NOT NULL,
	`sent_at` text,
	FOREIGN KEY (`user_id`) REFERENCES `users`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `daily_mails_day` ON `daily_mails` (`user_id`,`day`);--> statement-breakpoint
CREATE INDEX `daily_mails_state` ON `daily_mails` (`state`,`next_try_at`);--> statement-breakpoint
ALTER TABLE `mail_rules` ADD `daily` integer DEFAULT false NOT NULL;