-- Counts every replacement of a day's figures, so that what was computed from figures knows when it is out of date.

create table figure_change (
    number bigint not null
);

insert into figure_change (number) values (0);
