INSERT INTO `tallies` (`name`, `count`) VALUES ('on-the-desk', (SELECT count(*) FROM `line_summaries` WHERE `waiting` = 1));
