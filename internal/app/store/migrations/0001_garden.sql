-- +goose Up
-- Ids are made by the program, moments are Unix milliseconds.
CREATE TABLE garden (
    id           TEXT   NOT NULL PRIMARY KEY,
    name         TEXT   NOT NULL,
    revision     BIGINT NOT NULL CHECK (revision >= 1), -- the latest
    created_ms   BIGINT NOT NULL,
    changed_ms   BIGINT NOT NULL,
    discarded_ms BIGINT                                 -- null while in use
);

-- Rows are added and never changed.
CREATE TABLE revision (
    garden TEXT   NOT NULL REFERENCES garden (id),
    number BIGINT NOT NULL CHECK (number >= 1),
    text   TEXT   NOT NULL,
    why    TEXT   NOT NULL,
    at_ms  BIGINT NOT NULL,
    PRIMARY KEY (garden, number)
);

CREATE TABLE setting (
    key        TEXT   NOT NULL PRIMARY KEY,
    value      TEXT   NOT NULL,
    changed_ms BIGINT NOT NULL
);
