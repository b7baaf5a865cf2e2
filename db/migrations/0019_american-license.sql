ALTER TABLE `office` RENAME COLUMN `licence` TO `license`;--> statement-breakpoint
ALTER TABLE `office` RENAME COLUMN `licence_expires_on` TO `license_expires_on`;