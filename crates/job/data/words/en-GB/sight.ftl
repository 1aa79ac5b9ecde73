# What is seen on castings, and what entries of the log are called.

## What is seen

sight-look-round-holes = round holes
sight-look-many-small-holes = many small holes
sight-look-ragged-hole = a hole with torn walls
sight-look-sponge = spongy metal
sight-look-sink = a dip in the skin
sight-look-seam = a line where two streams met
sight-look-unfilled = missing metal, edges round
sight-look-broken-edge = missing metal, edges sharp
sight-look-drained = a shell, or an upper part empty
sight-look-fin = a thin web of extra metal
sight-look-veins = thin fins in corners or on cored faces
sight-look-bulge = a swollen face
sight-look-lump = a rough lump of extra metal
sight-look-crack = a crack or tear
sight-look-rough = rough skin
sight-look-sand-keyed = sand that will not come off
sight-look-sand-in-metal = sand in the metal
sight-look-dross-in-metal = dross, slag or skins in the metal
sight-look-scab = metal over a layer of sand
sight-look-groove = a shallow line or groove
sight-look-drag-marks = scores in the direction of the draw
sight-look-offset = halves that do not meet
sight-look-wall-uneven = a cored wall thick here and thin there
sight-look-wrong-size = sizes off all over
sight-look-hard-edge = edges that no file touches

## Where

sight-place-cope-face = on top
sight-place-drag-face = below
sight-place-side-wall = on a side
sight-place-joint = on the joint
sight-place-at-gate = by a gate
sight-place-opposite-gate = where the stream struck
sight-place-far-from-gate = where the metal came last
sight-place-heavy-section = in a heavy place
sight-place-thin-section = in a thin place
sight-place-inner-corner = in an inner corner
sight-place-edge = on an edge
sight-place-at-core = by a core
sight-place-at-insert = by a chill, chaplet or cast-in piece
sight-place-under-feeder = under a feeder
sight-place-large-flat = on a large flat
sight-place-low-down = deep in the mould
sight-place-between-arms = between arms that are held apart
sight-place-everywhere = all over
sight-place-inside = under the skin

## The wall of a hole, or the skin of the fault

sight-wall-smooth = smooth
sight-wall-shiny = smooth and shiny
sight-wall-dendritic = grown with needles
sight-wall-oxidised = dark or coloured by heat
sight-wall-bright = bright, as freshly broken
sight-wall-sand-lined = with sand in it
sight-wall-dross-lined = with dross or slag in it
sight-wall-round-edged = with round edges
sight-wall-sharp-edged = with sharp edges
sight-wall-rough = rough

## How large

sight-size-small = under 1 mm
sight-size-medium = 1 to 5 mm
sight-size-large = over 5 mm

## When it was seen

sight-when-knock-out = as it left the mould
sight-when-cleaning = as it was cleaned
sight-when-machining = as it was machined
sight-when-sawing = as it was sawn open
sight-when-use = in use

## What an entry of the log says

log-key-poured = poured on
log-key-temperature = temperature of the pour
log-key-time = time to fill it
log-key-mass = mass
log-key-freezing = heaviest section solid after
log-key-opening = opened after
log-key-how = how it went
log-key-note = note
log-key-mark = mark
log-key-good = good
log-key-use = what it is for
log-key-moisture = moisture of the sand
log-key-ramming = how hard it was rammed
log-key-vents = vents
log-key-feeder = feeders
log-key-core = cores
log-key-weights = laid on the cope
log-key-charge = charged
log-key-fuel = fuel burnt
log-key-melted = all liquid at
log-key-molten = held liquid for
log-key-scrap = the stock
log-key-degassed = degassed
log-key-skimmed = skimmed
log-key-left = left over
log-key-look = what is seen
log-key-place = where
log-key-surface = wall or skin
log-key-size = how large
log-key-seen = when it was seen

## Words of the log

log-word-soft = soft
log-word-even = even
log-word-hard = hard
log-word-none = none
log-word-few = few
log-word-many = many
log-word-small = small
log-word-enough = enough
log-word-well-baked = baked through
log-word-baked-short = baked short
log-word-damp = damp
log-word-unvented = unvented
log-word-steady = steady
log-word-broken = stopped and went on
log-word-splashed = splashed
log-word-slow = slow, the sprue not full
log-word-ran-short = ran short of metal
log-word-clean = clean
log-word-dirty = dirty

## What may be said of a defect

sight-look = what is seen
sight-place = where
sight-surface = wall or skin
sight-size = how large
sight-when = when it was seen
sight-castings = on how many castings
sight-metal = metal

sight-castings-one = one
sight-castings-some = some
sight-castings-all = all

sight-metal-aluminium = aluminium
sight-metal-zinc = zinc
sight-metal-pewter = pewter
sight-metal-brass = brass
sight-metal-bronze = bronze
sight-metal-copper = copper
sight-metal-iron = iron
