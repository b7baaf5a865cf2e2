CREATE TABLE `corrections` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`step_id` text NOT NULL,
	`number` text NOT NULL,
	`sheet` text NOT NULL,
	`comment` text NOT NULL,
	`answered_by` text NOT NULL,
	`answer` text NOT NULL,
	`changed_pages` text NOT NULL,
	`not_changed` text NOT NULL,
	`accepted_on` text,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`step_id`) REFERENCES `permit_steps`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
