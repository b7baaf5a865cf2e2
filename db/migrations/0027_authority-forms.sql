CREATE TABLE `form_entries` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`form_id` text NOT NULL,
	`field` text NOT NULL,
	`words` text NOT NULL,
	`by` text NOT NULL,
	`on` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `forms` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`version` integer NOT NULL,
	`title` text NOT NULL,
	`permit_kind` text NOT NULL,
	`requirement_id` text,
	`file_name` text NOT NULL,
	`sha256` text NOT NULL,
	`bytes` integer NOT NULL,
	`pages_json` text NOT NULL,
	`fields_json` text NOT NULL,
	`notes_json` text NOT NULL,
	`mappings_json` text NOT NULL,
	`days` text NOT NULL,
	`flatten` integer NOT NULL,
	`retired` integer NOT NULL,
	`saved_by` text NOT NULL,
	`saved_at` text NOT NULL,
	PRIMARY KEY(`id`, `version`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `forms_authority` ON `forms` (`authority_id`);