# What is put into remarks and labels: reasons, elements, things done.

## Advice that several remarks share

proved-by-test = have it designed and proved by test under licensed practice and your local code
compare-the-volume = mended; compare the volume with that of your drawing
mend-before-printing = too little to matter for the metal; mend it before printing the pattern

## Solids of a part

solid-named = "{ $name }"
solid-numbered = solid { $number }
the-part = the part

## Scrap by what it was, as in crates/metal/data/scrap.toml

scrap-radiator = soldered with lead, or dirty with it; drain the coolant, it is poison and it spits
    .name = radiator
scrap-house-radiator = old paint holds lead, and the hollows hold water: break it open and strip it first
    .name = house radiator
scrap-piston = knock out pins and rings: they are steel
    .name = piston
scrap-engine-block = degrease it; look for steel studs and for plugged water jackets
    .name = engine block
scrap-wheel = take off balance weights (lead or zinc), valves and paint; 'mag' may mean magnesium
    .name = wheel
scrap-saw-housing = light housings are often magnesium: vinegar on a filed spot tells
    .name = saw housing
scrap-tap = leaded so that it turns well, and chromium-plated; open every closed hollow
    .name = tap
scrap-door-handle = plating and old die castings may hold cadmium and lead
    .name = door handle
scrap-pipe = cut both ends open before it is heated: a closed tube bursts
    .name = pipe
scrap-pan = home-made pots hand on whatever they were made of; non-stick coatings fume poison
    .name = pan
scrap-can = up to half is lost as dross; lacquer smokes; crush them dry, never with liquid inside
    .name = can
scrap-brake-disc = brake dust may hold asbestos on old cars: wash it off wet
    .name = brake disc
scrap-bath = enamel flies off hot and may hold lead: break it off outdoors first
    .name = bath
scrap-propeller = bearing metals hold lead; non-sparking tools and springs may hold beryllium: never melt those
    .name = propeller
scrap-wire = strip it, never burn it: the smoke of the insulation is poison, old sheaths are lead
    .name = wire
scrap-battery = lead: no pot that ever held it may be used for anything else; leave batteries closed
    .name = battery
scrap-mixed = nobody knows what is in it: test each piece
    .name = mixed

## What was mended in a mesh

points-joined = { $count } close points joined
collapsed-dropped = { $count } collapsed facets dropped
doubles-dropped = { $count } doubled facets dropped
needles-mended = { $count } facets without area mended
slits-zipped = { $count } slits closed
holes-closed = { $count } small holes closed
faces-closed = { $count } opening(s), whole faces among them, closed flat
facets-turned = { $count } facets turned
shells-turned = { $count } shells turned outside out
flakes-dropped = { $count } flakes without thickness dropped
crossings-joined = what overlaps or crosses joined: volume { $before } before, { $after } after

## Why a flask does not take the patterns

no-flasks = the shop has no flask: list your own in shop.toml under [[flask]]
flask-unknown = flask "{ $flask }" is not in the shop's list; there is: { $known }
flask-too-small = flask "{ $flask }" is too small for { $count } pattern(s) with { $wall } of sand at the walls: wanted inside { $inside }, cope { $cope }, drag { $drag }
flasks-too-small = all of your flasks are too small for { $count } pattern(s) with { $wall } of sand at the walls: wanted inside { $inside }, cope { $cope }, drag { $drag }

## Elements, by their symbols

element-C = carbon
element-Si = silicon
element-Mn = manganese
element-P = phosphorus
element-S = sulphur
element-Cr = chromium
element-Fe = iron
element-Al = aluminium
element-Mg = magnesium
element-Cu = copper
element-Zn = zinc
element-Sn = tin
element-Pb = lead
element-Ni = nickel
element-Ti = titanium
element-Sb = antimony
element-Cd = cadmium
element-Bi = bismuth
element-CE = carbon equivalent
