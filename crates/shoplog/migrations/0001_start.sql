-- The log of the shop, version 1. Every table is told column by column in docs/log.md.

CREATE TABLE weather (
    id TEXT NOT NULL PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    written TEXT NOT NULL,
    at TEXT,
    air_c REAL,
    humidity_percent REAL,
    rain INTEGER CHECK (rain IN (0, 1)),
    wind TEXT,
    note TEXT
) STRICT;

CREATE TABLE heaps (
    id TEXT NOT NULL PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    written TEXT NOT NULL,
    name TEXT,
    mass_kg REAL,
    bond TEXT,
    clay TEXT,
    grain TEXT,
    begun TEXT,
    renewed TEXT,
    note TEXT
) STRICT;

CREATE TABLE batches (
    id TEXT NOT NULL PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    written TEXT NOT NULL,
    heap TEXT REFERENCES heaps (id) DEFERRABLE INITIALLY DEFERRED,
    mixed TEXT,
    sand_kg REAL,
    clay_kg REAL,
    binder_kg REAL,
    water_kg REAL,
    mulled_min REAL,
    moisture_percent REAL,
    planned_drying_h REAL,
    drying_h REAL,
    clay_burnt_percent REAL,
    organic_burnt_percent REAL,
    dried_percent REAL,
    core_sand_kg REAL,
    core_binder_kg REAL,
    parting_kg REAL,
    crust_out_percent REAL,
    heap_out_percent REAL,
    note TEXT
) STRICT;
CREATE INDEX batches_by_heap ON batches (heap);

CREATE TABLE sand_tests (
    id TEXT NOT NULL PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    written TEXT NOT NULL,
    heap TEXT REFERENCES heaps (id) DEFERRABLE INITIALLY DEFERRED,
    batch TEXT REFERENCES batches (id) DEFERRABLE INITIALLY DEFERRED,
    day TEXT,
    test TEXT,
    value REAL,
    unit TEXT,
    good INTEGER CHECK (good IN (0, 1)),
    who TEXT,
    note TEXT
) STRICT;
CREATE INDEX sand_tests_by_heap ON sand_tests (heap);
CREATE INDEX sand_tests_by_batch ON sand_tests (batch);

CREATE TABLE moulds (
    id TEXT NOT NULL PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    written TEXT NOT NULL,
    job TEXT,
    alloy TEXT,
    castings INTEGER,
    pattern TEXT,
    flask TEXT,
    heap TEXT REFERENCES heaps (id) DEFERRABLE INITIALLY DEFERRED,
    batch TEXT REFERENCES batches (id) DEFERRABLE INITIALLY DEFERRED,
    rammed TEXT,
    closed TEXT,
    opened TEXT,
    moisture_percent REAL,
    ramming TEXT,
    vents TEXT,
    gates TEXT,
    feeder TEXT,
    core TEXT,
    facing TEXT,
    weights_kg REAL,
    allowance_x_percent REAL,
    allowance_y_percent REAL,
    allowance_z_percent REAL,
    found TEXT,
    note TEXT
) STRICT;
CREATE INDEX moulds_by_heap ON moulds (heap);
CREATE INDEX moulds_by_batch ON moulds (batch);

CREATE TABLE planned (
    id TEXT NOT NULL PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    written TEXT NOT NULL,
    mould TEXT REFERENCES moulds (id) DEFERRABLE INITIALLY DEFERRED,
    figure TEXT,
    low REAL,
    likely REAL,
    "high" REAL,
    unit TEXT
) STRICT;
CREATE INDEX planned_by_mould ON planned (mould);

CREATE TABLE heats (
    id TEXT NOT NULL PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    written TEXT NOT NULL,
    alloy TEXT,
    furnace TEXT,
    fuel_kind TEXT,
    planned_charge_kg REAL,
    charge_kg REAL,
    charge_of TEXT,
    scrap TEXT,
    planned_fuel_kg REAL,
    planned_efficiency_percent REAL,
    fuel_kg REAL,
    lit TEXT,
    melted TEXT,
    molten_min REAL,
    degassed INTEGER CHECK (degassed IN (0, 1)),
    skimmed INTEGER CHECK (skimmed IN (0, 1)),
    dross_kg REAL,
    left_kg REAL,
    planned_loss_percent REAL,
    probe TEXT,
    note TEXT
) STRICT;

CREATE TABLE pours (
    id TEXT NOT NULL PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    written TEXT NOT NULL,
    heat TEXT REFERENCES heats (id) DEFERRABLE INITIALLY DEFERRED,
    mould TEXT REFERENCES moulds (id) DEFERRABLE INITIALLY DEFERRED,
    poured TEXT,
    planned_temperature_c REAL,
    temperature_c REAL,
    planned_time_s REAL,
    time_s REAL,
    planned_mass_kg REAL,
    mass_kg REAL,
    planned_freezing_min REAL,
    freezing_min REAL,
    planned_opening_min REAL,
    opening_min REAL,
    planned_gate_speed_m_per_s REAL,
    how TEXT,
    weather TEXT REFERENCES weather (id) DEFERRABLE INITIALLY DEFERRED,
    who TEXT,
    note TEXT
) STRICT;
CREATE INDEX pours_by_heat ON pours (heat);
CREATE INDEX pours_by_mould ON pours (mould);
CREATE INDEX pours_by_weather ON pours (weather);

CREATE TABLE castings (
    id TEXT NOT NULL PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    written TEXT NOT NULL,
    pour TEXT REFERENCES pours (id) DEFERRABLE INITIALLY DEFERRED,
    mark TEXT,
    good INTEGER CHECK (good IN (0, 1)),
    planned_mass_kg REAL,
    mass_kg REAL,
    use TEXT,
    note TEXT
) STRICT;
CREATE INDEX castings_by_pour ON castings (pour, good, mass_kg);

CREATE TABLE sizes (
    id TEXT NOT NULL PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    written TEXT NOT NULL,
    casting TEXT REFERENCES castings (id) DEFERRABLE INITIALLY DEFERRED,
    what TEXT,
    along TEXT,
    pattern_mm REAL,
    measured_mm REAL,
    held INTEGER CHECK (held IN (0, 1)),
    note TEXT
) STRICT;
CREATE INDEX sizes_by_casting ON sizes (casting);

CREATE TABLE defects (
    id TEXT NOT NULL PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    written TEXT NOT NULL,
    casting TEXT REFERENCES castings (id) DEFERRABLE INITIALLY DEFERRED,
    look TEXT,
    place TEXT,
    size TEXT,
    surface TEXT,
    seen TEXT,
    sprue INTEGER CHECK (sprue IN (0, 1)),
    cause TEXT,
    note TEXT
) STRICT;
CREATE INDEX defects_by_casting ON defects (casting);

CREATE TABLE photos (
    id TEXT NOT NULL PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    written TEXT NOT NULL,
    of_table TEXT,
    "of" TEXT,
    sha256 TEXT,
    taken TEXT,
    wide INTEGER,
    "high" INTEGER,
    note TEXT
) STRICT;
CREATE INDEX photos_by_of ON photos ("of");

CREATE TABLE files (
    id TEXT NOT NULL PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    written TEXT NOT NULL,
    name TEXT,
    text TEXT
) STRICT;

CREATE TABLE changes (
    id TEXT NOT NULL PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    written TEXT NOT NULL,
    of_table TEXT,
    "of" TEXT,
    what TEXT,
    was TEXT,
    became TEXT
) STRICT;
CREATE INDEX changes_by_of ON changes ("of");
