-- Results of a planned test day had ids that no line file takes: `day|09:00|p12||green|t2`.
UPDATE `tests` SET `id` = planned_test_id(`id`) WHERE instr(`id`, '|') > 0;
