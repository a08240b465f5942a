-- The bike as its folder described it on that day, as JSON: specification, price and loan with it.
-- Empty in rows of an older archive, which are reduced again.

alter table reduction add column about text not null default '';
