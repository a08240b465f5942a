-- Inputs and history are the truth; a figure is a cache that names its inputs by hash.
-- Ids and times are made by the program: times are UTC text of fixed width, so that they sort as text.

create table revision (
    subject text not null,          -- 'day' or 'ledger'
    name text not null,
    number bigint not null,
    at text not null,
    who text not null,
    why text not null,
    primary key (subject, name, number)
);

create table revision_file (
    subject text not null,
    name text not null,
    number bigint not null,
    path text not null,
    sha256 text not null,
    bytes bigint not null,
    primary key (subject, name, number, path),
    foreign key (subject, name, number) references revision (subject, name, number)
);

create table history (
    id bigint not null primary key,
    at text not null,
    who text not null,
    act text not null,
    subject text not null,
    name text not null,
    number bigint not null,
    why text not null,
    changes text not null           -- one line a file: 'added path', 'changed path', 'removed path'
);

create table reduction (
    day text not null primary key,
    number bigint not null,
    method text not null,           -- trial versions and scatter record it was reduced with
    state text not null,            -- 'reduced', 'unusable' or 'failed'
    message text not null,
    date text not null,
    place text not null,
    bike text not null,
    maker text not null,
    model text not null,
    category text not null,
    drive text not null,
    findings text not null          -- JSON
);

create table figure (
    day text not null,
    figure text not null,
    variant text not null,
    trial text not null,
    version integer not null,
    kind text not null,
    bike text not null,
    configuration text not null,
    date text not null,
    value double precision not null,
    low double precision not null,  -- of the any-day interval
    high double precision not null,
    accepted boolean not null,
    json text not null,
    primary key (day, figure, variant)
);

create index figure_by_id on figure (figure, bike);
