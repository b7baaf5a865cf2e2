CREATE TABLE `drawing_scales` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`feet_per_inch` integer NOT NULL,
	`citation` text NOT NULL,
	`as_of` text NOT NULL,
	`position` integer NOT NULL,
	PRIMARY KEY(`authority_id`, `id`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action
);
