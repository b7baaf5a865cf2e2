PRAGMA foreign_keys=OFF;--> statement-breakpoint
CREATE TABLE `__new_deliveries` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`notice_id` text NOT NULL,
	`method` text NOT NULL,
	`sent_on` text NOT NULL,
	`by` text NOT NULL,
	`tracking` text NOT NULL,
	`outcome` text NOT NULL,
	`outcome_on` text,
	`proof_upload_id` text,
	`note` text NOT NULL,
	`at` text DEFAULT '' NOT NULL,
	`place` text DEFAULT '' NOT NULL,
	`handed_to` text DEFAULT '' NOT NULL,
	`declared_upload_id` text,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`notice_id`) REFERENCES `notices`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`proof_upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`declared_upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
INSERT INTO `__new_deliveries`("line_id", "id", "position", "notice_id", "method", "sent_on", "by", "tracking", "outcome", "outcome_on", "proof_upload_id", "note") SELECT "line_id", "id", "position", "notice_id", "method", "sent_on", "by", "tracking", "outcome", "outcome_on", "proof_upload_id", "note" FROM `deliveries`;--> statement-breakpoint
DROP TABLE `deliveries`;--> statement-breakpoint
ALTER TABLE `__new_deliveries` RENAME TO `deliveries`;--> statement-breakpoint
PRAGMA foreign_keys=ON;