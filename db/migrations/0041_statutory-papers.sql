CREATE TABLE `contracts` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`property_id` text NOT NULL,
	`party_id` text NOT NULL,
	`signed_on` text,
	`place` text NOT NULL,
	`amount_cents` integer,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`party_id`) REFERENCES `parties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `paper_waivers` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`paper_id` text NOT NULL,
	`party_id` text NOT NULL,
	`property_id` text NOT NULL,
	`given_up` integer NOT NULL,
	`reason` text NOT NULL,
	`by` text NOT NULL,
	`on` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`party_id`) REFERENCES `parties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `statutory_papers` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`state` text NOT NULL,
	`title` text NOT NULL,
	`title_es` text NOT NULL,
	`to` text NOT NULL,
	`condition` text NOT NULL,
	`least_cents` integer,
	`event` text NOT NULL,
	`count` integer NOT NULL,
	`unit` text NOT NULL,
	`way` text NOT NULL,
	`by` text NOT NULL,
	`given` text NOT NULL,
	`work_waits` integer NOT NULL,
	`wait_unit` text NOT NULL,
	`citation` text NOT NULL,
	`as_of` text NOT NULL,
	`text` text NOT NULL,
	`text_es` text NOT NULL,
	`confirmed_by` text NOT NULL,
	`confirmed_on` text,
	`position` integer NOT NULL,
	PRIMARY KEY(`authority_id`, `id`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
ALTER TABLE `notices` ADD `paper_id` text DEFAULT '' NOT NULL;