-- What an editor last saw of each sentence: rows are only added, the latest of an id counts.

create table sentence (
    id text not null,
    number bigint not null,         -- counts the times that this id was seen
    at text not null,
    who text not null,
    bike text not null,
    said boolean not null,          -- false when it was seen to be gone
    hash text not null,
    written_metric text not null,
    written_imperial text not null,
    spoken_metric text not null,
    spoken_imperial text not null,
    method text not null,           -- what it rested on, in three parts
    figure text not null,
    population text not null,
    primary key (id, number)
);

create index sentence_by_bike on sentence (bike);
