CREATE TABLE `__new_requirements` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`position` integer NOT NULL,
	`sheet` text NOT NULL,
	`title` text NOT NULL,
	`detail` text NOT NULL,
	`citation` text NOT NULL,
	`as_of` text NOT NULL,
	`mandatory` integer NOT NULL,
	PRIMARY KEY(`authority_id`, `id`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "requirements_sheet" CHECK("__new_requirements"."sheet" in ('application', 'line-drawing', 'schedule-of-connections', 'observation-log', 'tests', 'capacity', 'scope', 'responsibility', 'split', 'consents', 'proof-of-notice', 'contractor-standing', 'holds-and-waivers', 'upload'))
);
--> statement-breakpoint
INSERT INTO `__new_requirements`("id", "authority_id", "position", "sheet", "title", "detail", "citation", "as_of", "mandatory") SELECT "id", "authority_id", "position", "sheet", "title", "detail", "citation", "as_of", "mandatory" FROM `requirements`;--> statement-breakpoint
DROP TABLE `requirements`;--> statement-breakpoint
ALTER TABLE `__new_requirements` RENAME TO `requirements`;