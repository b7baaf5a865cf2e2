CREATE TABLE `utility_responses` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`ticket_id` text NOT NULL,
	`utility` text NOT NULL,
	`kind` text NOT NULL,
	`answer` text NOT NULL,
	`answered_on` text,
	`good_until` text,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`ticket_id`) REFERENCES `locate_tickets`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
