-- +goose Up
-- The logbook. Rows are added and never changed: a correction is a new row.
CREATE TABLE reading (
    garden      TEXT    NOT NULL REFERENCES garden (id),
    number      BIGINT  NOT NULL CHECK (number >= 1), -- in the order in which a garden's rows were written down
    id          TEXT    NOT NULL,                     -- made by whoever wrote the row
    root        TEXT    NOT NULL,                     -- id of the first row of its corrections; its own where it corrects none
    tub         TEXT    NOT NULL,                     -- its name in small letters
    at_ms       BIGINT  NOT NULL,                     -- when it was read
    recorded_ms BIGINT  NOT NULL,                     -- when it was written down
    withdrawn   BOOLEAN NOT NULL,
    cells       TEXT    NOT NULL,                     -- the whole row, as JSON
    -- what is drawn, beside the row, so that years are drawn without reading all of it
    ph_low      DOUBLE PRECISION,
    ph_high     DOUBLE PRECISION,
    ec_low      DOUBLE PRECISION, -- mS/cm as read
    ec_high     DOUBLE PRECISION,
    ec_raw      BOOLEAN NOT NULL, -- not brought to 25 °C by the meter
    water_c     DOUBLE PRECISION,
    litres      DOUBLE PRECISION,
    depth_mm    DOUBLE PRECISION,
    filled_l    DOUBLE PRECISION,
    added_l     DOUBLE PRECISION,
    height_mm   DOUBLE PRECISION,
    doubtful    TEXT    NOT NULL, -- the fields kept as doubtful, parted by semicolons
    PRIMARY KEY (garden, number),
    UNIQUE (garden, id)
);
CREATE INDEX reading_root ON reading (garden, root, number);
CREATE INDEX reading_moment ON reading (garden, at_ms, number);
CREATE INDEX reading_tub ON reading (garden, tub, at_ms, number);
