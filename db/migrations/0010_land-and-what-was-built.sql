CREATE TABLE `built_work` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`item_id` text,
	`on_day` text NOT NULL,
	`by` text NOT NULL,
	`words` text NOT NULL,
	`upload_id` text,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`item_id`) REFERENCES `scope_items`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `land_stretches` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`from_cft` integer NOT NULL,
	`to_cft` integer NOT NULL,
	`kind` text NOT NULL,
	`property_id` text,
	`shown_by` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
ALTER TABLE `requirements` ADD `due` text DEFAULT 'submission' NOT NULL;--> statement-breakpoint
ALTER TABLE `requirements` ADD `permit_kind` text;