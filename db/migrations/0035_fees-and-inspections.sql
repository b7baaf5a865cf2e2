CREATE TABLE `inspection_kinds` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`title` text NOT NULL,
	`permit_kind` text,
	`needed_before` text NOT NULL,
	`lead` integer NOT NULL,
	`lead_unit` text NOT NULL,
	`cut_off` text NOT NULL,
	`asks_for_figures` integer NOT NULL,
	`citation` text NOT NULL,
	`as_of` text NOT NULL,
	`position` integer NOT NULL,
	PRIMARY KEY(`authority_id`, `id`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `permit_fees` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`permit_id` text NOT NULL,
	`kind` text NOT NULL,
	`fee_id` text,
	`amount_cents` integer NOT NULL,
	`on` text NOT NULL,
	`receipt` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`permit_id`) REFERENCES `permits`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
ALTER TABLE `fees` ADD `permit_kind` text;--> statement-breakpoint
ALTER TABLE `fees` ADD `included` integer DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE `inspections` ADD `booked_until` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `inspections` ADD `kind_id` text;--> statement-breakpoint
ALTER TABLE `inspections` ADD `start_psi_hundredths` integer;--> statement-breakpoint
ALTER TABLE `inspections` ADD `end_psi_hundredths` integer;--> statement-breakpoint
ALTER TABLE `inspections` ADD `minutes_hundredths` integer;--> statement-breakpoint
ALTER TABLE `inspections` ADD `witness` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `inspections` ADD `hours_hundredths` integer;